/*
 * What is done in the shared store at one go, so that nothing of another server comes between. In
 * the store's own language, Lua. A document's updates are a stream of entries in the order all
 * servers see them in; where each document stands is one field of one hash. Who is told of a change
 * hears `moved`, `links` or `about` on the shop's bell.
 */

/**
 * KEYS: stream, standings. ARGV: bell, document, the last entry the server knows, updates. Answers
 * what others added since, then the entries of these updates, and the time, by the clock of the
 * store.
 */
export const ADD = `
local others = redis.call('XRANGE', KEYS[1], '(' .. ARGV[3], '+')
local time = redis.call('TIME')
local at = string.format('%.0f', time[1] * 1000 + math.floor(time[2] / 1000))
local held = redis.call('HGET', KEYS[2], ARGV[2])
local mark = held and string.sub(held, 1, 16) or '0000000000000000'
local own = {}
for i = 4, #ARGV do
	mark = string.sub(redis.sha1hex(mark .. ARGV[i]), 1, 16)
	own[#own + 1] = {redis.call('XADD', KEYS[1], '*', mark, ARGV[i], 'at', at), mark}
end
if #own > 0 then
	redis.call('HSET', KEYS[2], ARGV[2], mark .. ' ' .. at)
	redis.call('PUBLISH', ARGV[1], 'moved ' .. mark .. ' ' .. at .. ' ' .. ARGV[2])
end
return {others, own, at}`;

/**
 * KEYS: stream, standings. ARGV: document, the last entry the server knows, that and all before it
 * as one. Answers 1, or 0 when another server has added to it and nothing was done. The one entry
 * goes by the number of the last, so that a server that knows that reads nothing anew.
 */
export const MAKE_ONE = `
local last = redis.call('XREVRANGE', KEYS[1], '+', '-', 'COUNT', 1)[1]
local held = redis.call('HGET', KEYS[2], ARGV[1])
if not last or not held or last[1] ~= ARGV[2] then return 0 end
redis.call('DEL', KEYS[1])
redis.call('XADD', KEYS[1], ARGV[2], string.sub(held, 1, 16), ARGV[3], 'at', string.sub(held, 18), 'packed', '1')
return 1`;

/** KEYS: value. ARGV: bell, what it was when it was read ('' for none), what it is to be. */
export const SWAP = `
if (redis.call('GET', KEYS[1]) or '') ~= ARGV[2] then return 0 end
redis.call('SET', KEYS[1], ARGV[3])
redis.call('PUBLISH', ARGV[1], 'links')
return 1`;

/**
 * KEYS: about, stream, standings. ARGV: bell, the mark of a new shop, format, form of the jobs,
 * document, what it begins with, its mark. Founds the shop if there is none; raises the form of the
 * jobs if this one is newer. Answers the shop's mark, format and form.
 */
export const FOUND = `
if redis.call('EXISTS', KEYS[1]) == 0 then
	local time = redis.call('TIME')
	local at = string.format('%.0f', time[1] * 1000 + math.floor(time[2] / 1000))
	redis.call('HSET', KEYS[1], 'id', ARGV[2], 'format', ARGV[3], 'job', ARGV[4])
	redis.call('XADD', KEYS[2], '*', ARGV[7], ARGV[6], 'at', at)
	redis.call('HSET', KEYS[3], ARGV[5], ARGV[7] .. ' ' .. at)
end
local about = redis.call('HMGET', KEYS[1], 'id', 'format', 'job')
if tonumber(about[2]) <= tonumber(ARGV[3]) and tonumber(about[3]) < tonumber(ARGV[4]) then
	redis.call('HSET', KEYS[1], 'format', ARGV[3], 'job', ARGV[4])
	redis.call('PUBLISH', ARGV[1], 'about')
	about = redis.call('HMGET', KEYS[1], 'id', 'format', 'job')
end
return about`;
