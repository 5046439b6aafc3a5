/** Wrong usage, or a file that cannot be read: said on standard error, exit code 2. */
export class Usage extends Error {}

export const HELP = `kerf-and-nap: boards, cloth and paper for boxes and wrapped panels in vehicles

  kerf-and-nap plan [job.json] [--out DIR] [--json] [--machine] [--seed N] [--effort N]
                    [--paper a4|letter|a3|tabloid]
      the whole plan; without a job, the built-in sample. Writes the print pack and all lists to DIR
      (out when none is given); --json prints the plan to standard output instead.
      --machine: also every part, blank, routed sheet and roll as DXF and SVG, in DIR/machine.
  kerf-and-nap plan job.json job.json ... [the same options]
      several jobs in one go: their sheets and rolls laid out at once, marks that name the job, one
      order, and what each job has to bear. Never dearer than one after the other; jobs that differ
      in saw, ruler or currency are refused, and nothing is written.
  kerf-and-nap nest [problem.json] [--seed N] [--effort N] [--seconds N]
                    [--workers N] [--lines]
      only the layout of a plain problem, from a file or standard input; the answer is JSON.
      --workers: so many processes beside each other, each with a seed, and the effort or the
      seconds, of its own; with outlines each goes on from the best layout found by any.
      --lines: one problem a line in, one answer a line out, in the same order.
  kerf-and-nap check [job.json]
      problems and notes only.
  kerf-and-nap shop [--folder DIR] [--network] [--port N] [--link]
      the app, and one shop's jobs and rack for all its devices, kept in DIR (kerf-and-nap-shop in
      your home folder when none is given). On this machine only; --network: for the others on its
      network too. The first start prints the link to join by; --link makes another one.
  kerf-and-nap shop --store redis://HOST:PORT [--name SHOP] [--address URL] [...]
      the same shop from several servers, kept in a Redis or Valkey they share (also SHOP_STORE and
      SHOP_NAME). --address: by which devices reach whatever stands before the servers.

Exit codes: 0 done, 1 the job has problems (notes are none), 2 wrong usage or unreadable file,
3 a fault of the planner: what could be made was made, and the rest says so.
`;
