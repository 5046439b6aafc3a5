/**
 * Advance widths of the printed faces, taken from the fonts by src/setup/widths.ts; never edit by
 * hand. Each token is [gap to the last code point '-'] [run length '*'] width, all in base 36.
 */
export const WIDTHS = {
	regular: {
		unitsPerEm: 1000,
		runs: `
d-5w i-5w 76 am hp ey n9 he 64 2*8e bi f0 6w a0 6w 9p a*f0 2*76 3*f0 bz mb g3 gd fl gv em e1 hf hp a2 cu fy cl ka hp hq f8 hq g2 el ec gz f9 mg ff eu
ek 7y 9p 7y f0 e4 f0 df ek cm ek dr 86 d9 e9 2*6c d9 6v lv e9 e0 2*ek 98 c7 8u e9 cd je cr cj bp 8m 80 8m f0 x-5w 76 cx ev f4 f6 80 em f0 jg a2 cv f0
a0 bw f0 bq f0 2*8w f0 ee gc 88 f0 8w a0 cv kc l4 k2 bq 6*g3 ms fl 4*em 4*a2 gy hp 5*hq f0 hq 4*gz eu f8 g3 6*df lq cm 4*dr 4*6c dy e9 5*e0 f0 e0 4*e9
cj ek cj g3 df g3 df g3 df fl cm fl cm fl cm fl cm gv eu gy ek em dr em dr em dr em dr em dr hf dc hf dc hf dc hf dc hp e9 hw e9 a2 6c a2 6c a2 6c a2
6c a2 6c g6 co cu 6c fy 2*d9 cl 6v cl 6v cl 6x cl 93 ct 70 hp e9 hp e9 hp e9 l5 hp e9 hq e0 hq e0 hq e0 om n8 g2 98 g2 98 g2 98 el c7 el c7 el c7 el c7
ec 8u ec 8u ec 8z gz e9 gz e9 gz e9 gz e9 gz e9 gz e9 mg je eu cj eu ek bp ek bp ek bp 71 f-hq 2-c4 d-hq e0 d-h5 ef s-g3 df a2 6c hq e0 gz e9 gz e9 gz
e9 gz e9 gz e9 t-g3 df ms lq hq e0 o-el c7 ec 8u r-6c x-dr 2p-2*f0 9-2*f0 g-6*f0 y-5*0 1-7*0 5-0 2-0 5-0 7-0 2-3*0 47-fn 22m-g5 37k-mg je mg je mg je
o-hk 1-g3 df g3 df g3 df g3 df g3 df g3 df g3 df g3 df g3 df g3 df g3 df g3 df em dr em dr em dr em dr em dr em dr em dr em dr a2 6c a2 6c hq e0 hq e0
hq e0 hq e0 hq e0 hq e0 hq e0 hq e0 hq e0 hq e0 hq e0 hq e0 gz e9 gz e9 h5 ef h5 ef h5 ef h5 ef h5 ef eu cj eu cj eu cj eu cj 7t-eo ji 3-3*6w 1-3*bz
1-dq dr 9y 3-k9 9-ws 1-64 am 5-2*7m 9-2s 17-8w 3-6*8w 6-a*8w n-fp 2-ev 1-hk 1-i4 ny ji ei fn fj f8 2-ft gw 1-fq fo 2-f7 2*f6 2-fn 1-g4 2b-cb 2-pv b-ge
3-hw 7-i5 x-l9 l1 1-l4 kz l4 kz ku l2 kd k3 kw 2*km k2 1d-a*lo f-2*lo 5-4*lo 2-2*lo 2-2*lo 8-lo 1-lo 1n-es 3-g4 8-hp 1-cp f0 2-2s 4-f0 3-il c-ap s-f0
n-f0 3-2*f0 o4-f0 94-lo 1k-lo qp-4*lo 12a6-wp kr-t2 1e2-2*0 tk-ei f1`,
	},
	semibold: {
		unitsPerEm: 1000,
		runs: `
d-5w i-5w 7w bx g6 et o6 hw 6j 2*8f ea f0 7m a2 7m b5 a*f0 2*7u 3*f0 cf mj gu go g5 hd f4 ej ht i3 ar dq h2 d5 kh i3 hu g7 hu gp f6 ek hc g7 nx gj fq
f0 8b b5 8b f0 dy f0 e3 f4 cw f4 e1 94 do es 70 73 e7 7g ma es e2 2*f4 9x ch 9a et d8 kj dk df ck 95 9m 95 f0 x-5w 7w dn eg fk fz 9m eb f0 js az dq f0
a2 bo f0 bq f0 8v 8w f0 ez gr 8s f0 8w an dq k8 l1 jy c7 6*gu nv g5 4*f4 4*ar he i3 5*hu f0 ht 4*hc fq g6 h1 6*e3 lq cw 4*e1 4*72 et es 5*e2 f0 e8 4*et
df f4 df gu e3 gu e3 gu e2 g5 cw g5 cw g5 cw g5 cw hd g4 he f3 f4 e1 f4 e1 f4 e1 f3 e1 f4 e1 ht dw ht dw ht dw ht dw i3 es i9 er ar 72 ar 72 ar 72 as
72 ar 72 gd e3 dq 73 h2 2*e7 d5 7g d5 7g d5 85 d5 ag dd 7g i3 es i3 es i3 es m9 i1 er hu e2 hu e2 hu e2 ow mq gp 9x gp 9x gp 9x f6 ch f6 ch fb ch f6 ch
ek 9a ek 9a eo 9g hc et hc et hc et hc et hc et hd es nx kj fq df fq f0 ck f0 ck f0 ck 7q f-hv 2-c4 d-ht e4 d-hm f3 s-gu e3 ar 72 hu e2 hc et hc et hc
et hc et hc et t-gu e3 nv lq ht e8 o-f6 ch ek 9a r-73 x-e1 2p-2*f0 9-2*f0 g-6*f0 y-5*0 1-7*0 5-0 2-0 5-0 7-0 2-3*0 47-fr 22m-gk 37k-nx kj nx kj nx kj
o-i0 1-gu e3 gu e3 gu e3 gu e3 gu e3 gu e3 gu e3 gu e3 gu e3 gu e3 gu e3 gu e3 f4 e1 f4 e1 f4 e1 f4 e1 f4 e1 f4 e1 f4 e1 f4 e1 ar 72 ar 70 hu e2 hu e2
hu e2 hu e2 hu e2 hu e2 hu e2 ht e4 ht e4 ht e4 ht e4 ht e4 hc et hc et hm f3 hm f3 hm f3 hm f3 hm f3 fq df fq df fq df fq df 7t-eo ji 3-3*7h 1-3*d6
1-2*d6 ak 3-ly 9-y8 1-6j bx 5-2*7w 9-2q 17-8w 3-8w 8v 4*8w 6-2*8w 8v 2*8w 8v 4*8w n-fr 2-eq 1-j3 1-li p8 m6 eg fp go f4 2-h6 gp 1-g4 fa 2-f5 fh f9 2-gc
1-gk 2b-dk 2-qd b-fm 3-hu 7-hx x-l4 ky 1-l1 kv ky ks ko kx kc k1 kt kj ki jy 1d-a*mi f-2*mi 5-4*mi 2-2*mi 2-2*mi 8-mi 1-mi 1n-ep 3-gv 8-i2 1-dr f0 2-2q
4-f0 3-ji c-b5 s-f0 n-f0 3-2*f0 o4-f0 94-ki 1k-ki qp-4*mi 12a6-wp kr-t2 1e2-2*0 tk-fu gk`,
	},
	fallback: {
		unitsPerEm: 2048,
		runs: `
w-g9 ki nj 16w wk 1cn 13x e2 2*jz pl 16w g9 ih g9 h9 a*wk 2*h9 3*16w r6 1f7 z0 z4 zr 13f wc tg 13o 12i 2*f3 xk si 186 12a 14a uv 14a zk wi v9 11h z0
1em z2 v9 z2 jz h9 jz 16w 2*pl vd wi s5 wi vi i0 wi wg 2*e8 tn e8 1dv wg vb 2*wi l1 qo k2 wg ua 15v 2*ua qv wk h9 wk 16w x-g9 ki 4*wk h9 2*pl 1f7 o4 vb
16w ih 1f7 2*pl 16w 2*ki pl 2*wk g9 pl ki o4 vb 3*1dm r6 6*z0 1dv zr 4*wc 4*f3 13o 12a 5*14a 16w 14a 4*11h v9 uz w9 6*vd 1e9 s5 4*vi 4*e8 vb wg 5*vb
16w vb 4*wg ua wi ua z0 vd z0 vd z0 vd zr s5 zr s5 zr s5 zr s5 13f wi 13o wi wc vi wc vi wc vi wc vi wc vi 13o wi 13o wi 13o wi 13o wi 12i wg 1aw zk f3
e8 f3 e8 f3 e8 f3 e8 f3 e8 u7 sg f3 e8 xk 2*tn si e8 si e8 si j7 si hi sr ej 12a wg 12a wg 12a wg 15n 12a wg 14a vb 14a vb 14a vb 1ir 1gd zk l1 zk l1
zk l1 wi qo wi qo wi qo wi qo v9 k2 v9 k2 v9 k2 11h wg 11h wg 11h wg 11h wg 11h wg 11h wg 1em 15v v9 ua v9 z2 qv z2 qv z2 qv i0 wi 11m z4 wi z4 wi 100
zr s5 13o 15x z4 wi vb wc 14a vg tg i0 13o z5 1ed i3 f3 126 tn e8 ua 1dv 12a wg 14a 1ar vb 1ck 12v xd wi zk wi qo wc h7 k2 v9 k2 v9 17x wg 134 10w 122
11e z2 qv 2*y3 tk qv wk y3 tk q4 wi f3 p7 ni f4 20s 1ui 1n3 16r 149 nd 1bo 1ba 14t z0 vd f3 e8 14a vb 11h wg 11h wg 11h wg 11h wg 11h wg vi z0 vd z0 vd
1dv 1e9 13o wi 13o wi xk tn 14a vb 14a vb y3 tk e8 20s 1ui 1n3 13o wi 1kz yx 12a wg z0 vd 1dv 1e9 14a vb z0 vd z0 vd wc vi wc vi f3 e8 f3 e8 14a vb 14a
vb zk l1 zk l1 11h wg 11h wg wi qo v9 k2 w3 qp 12i wg 11n 16w zr v9 z2 qv z0 vd wc vi 14a vb 14a vb 14a vb 14a vb v9 ua oa 175 of e8 2*1f3 z0 zr s5 si
v9 qo qv uv oi z4 11h z0 wc vi f3 e8 140 wi zk l1 v9 ua uq 3*wi s4 s5 wi zn 2*vi 15y ro r8 13p y0 e8 zm wi w8 2*ui 3*wg e8 hb j0 k9 oy e9 105 3*1dv x2
wv wg vb 17x 119 xr 2*l7 l6 l1 l0 2*r5 2*uw qo 2*h7 nm h7 2*k2 wg vm um ua 15v ua v9 2*qv 2*tk 4*q4 14a to y0 109 xh ey y5 py 118 2*q4 1fx 1i5 1fu 16i
v8 13u 17f 104 xi 2*qd xu xz kp kf 8y d9 f4 f5 je qd j2 e9 nj 3*g9 2*fq 2*ix 6*pl e2 3*pl e2 3*pl 2*h9 2*fq 2*pl jy g9 6*pl g5 pl ls 8i j3 mq ix 5*p9
2-2*pl qi 4-pl 3-pl 8-28*0 1-3*0 3-2*0 1-0 1-7*0 d-xi t2 184 x5 2*e9 12a x9 2-pl s4 s5 s4 h9 f3 4-2*pl zg g9 127 18l kw 1-15l 1-168 169 hb z0 z4 si z0
wc z2 12i 14a f3 xk z0 186 12a wc 14a 12i uv 1-wc 2*v9 14a z2 14a 134 f3 v9 xr ro wg hb tm xr wo ua vb ro ru wg vb hb u6 ua wk sl sj vb ut wi u1 wg ut
tm xr tk xr 16v hb tm vb tm 16v xk vg vp zr 174 zr xr 16v xz 14a vb x7 u1 tg nh 2*xr 18a w4 1bs 16v 12t xr 14i vh z5 v2 13a w0 zs vb v9 rg xz wi s5 e8
14a 2*vi uz wi zr 186 xb wi 100 zr 100 2*wc 149 v8 zr wi 3*f3 1k0 1hi 149 10c 12a v7 12i z0 2*z4 v8 140 wc 1j5 wt 2*12a 10c 12i 186 12i 14a 12i uv zr
v9 v7 182 z2 13r z3 1ir 1k0 16m 196 z4 zr 1j9 zk vd vk u6 qw ze vi 1a4 r8 2*x9 ux wq 12m xh vb xh wi s5 tt ua 17r ua yu u9 1au 1c8 106 14f u6 s3 173 us
2*vi w0 qw s3 qo 3*e8 1a7 1a0 xd ux x9 ua xh 1bs 16v 13g ye 1c9 12c 190 143 1nd 1f9 14a vb 1gk 167 wk ro 17u 18v 14a vb 140 y1 140 y1 1es 1aa 1cs 12t
1oe 1gm 1bs 16v zr s5 pq 5*0 2*le 13j yn z4 u6 uv wi v8 qw yj u8 vy r4 1j5 1a4 wt r8 10c ux 10c ux 10c ux 17u 16k 12i xt 1fx 18w 1jc 1av 18y zh zr s5
v9 tt v9 ua v9 ua z2 ua 1bt 15a z3 u9 z3 u9 z3 wg 1c6 119 1c6 119 f3 1j5 1a4 xk ux 13q yb 12i xt 13r yu z3 u9 19g 13n e8 z0 vd z0 vd 1dv 1e9 wc vi 14a
vi 14a vi 1j5 1a4 wt r8 y3 tk 12a x9 12a x9 14a vb 14a vb 14a vb zr s3 v7 ua v7 ua v7 ua z3 u9 v8 qw 196 14f yj u8 z2 ua z2 ua z4 u6 1fi 19x 1dw 18i yr
u4 1iv 1d0 1kz 1di 13o xr 13k 10e vg ro 12i wq 1nu 1ev 19r 189 1gt 1eh 14a wi 1em 15v 10c ux 1jb 1ac 1jc 1ap 14l yy b-138 11h 2*12k 11h 13i wr 11h 180
12k zd ra 1b7 187 11h 10n 137 12k 139 14i 119 11b 12r 11h 10i 14z 13b 14i 11h 12k 103 zi 122 ri 15i 12r 14a 14g 2-fq g9 c0 ii c6 kr pl 1-1dv wg xo xy
wg wi qc wg 11s xo wg dw 1e6 vv 2*wg v4 wh w7 wg dw wg pi wg kp 1dv so x7 2*wg 1du wg wf m9 1du wk v7 158 15j 1-h9 ih 11-e*0 ih 0 f3 2*0 f3 2-ml 0 8-y8
tl l3 ry xg dy hq xg x7 bg ri r2 t3 xz yr dy ki x8 w1 wr vz rm ud 10b sw 109 xn 5-o3 ln gx l9 x0 h-2*wm 1-12r 1e0 1-gi 8-0 5-g9 3-r6 1-o2 2*e8 oq e8
142 e8 1c7 qt 2*1c7 3*x1 2*ms 2*oq 2*1qi 2*1pw 2*1bc 2*uj 5-f0 1h2 13q 167 117 vp 11l qt oq 2*142 b*0 1-0 2-pl 5-b*ri gm g9 rw 1c7 13q 0 3-ey 4-8*1c7
7*x1 9*ms 2*oq pi r4 v9 r4 3*oq 3*1qi 2*1pw 1bc uj 6*1h2 2*13q 19t 1hy 19t 3*167 6*19t 4*117 5*11l zr x1 6-3*oq 2-oq 142 1-142 1-142 4-qt q-a*ri
5i-a*wk e8 t9 lp ua 2*xh ue xh 16f 2*mf sl vb hx 1d3 o7 143 xh w0 11k r4 112 o7 w0 ue 2*r4 qr 2*ue 3-9*0 2*g1 2-2*so ih 18k-wk 1t-yb z0 1-z8 2-op w5
1-z0 2-z7 6-y9 wu x0 xj 1-xq 2*w0 125 139 2*z5 1-zx z7 z0 1-x9 1-wd 2-100 15x 1-we z0 14b wd 0 2*rl 6*0 1-2*0 xy 2-j7 xn nj s0 p5 1-yi 1-6*0 2-wk 2*ws
yb 2*w0 100 yb yi yn 2-2*1gn ci-18r 11j yr 16q vi 13a 12k 1as n7 vq 175 196 vz 17r 140 w8 1ao 2*vr 17r 18b 111 w9 vr w0 vq 15v 18q vi vw w0 113 178 ui
z9 ui ue 11s a-q0 qi tr 15v q0 q9 pm 150 qi q4 1ii 2*qr 149 q0 qi 14r qr xi qr 169 q9 149 2*qi qr t9 qr qi qm qr n9 q0 qi 2*q0 qi sd 16d s9 q0 t9 q0 mx
gk lg-4*z0 3*13d 1-3*13d 16r 16q 16r 16q 16r 16q 1di 1fj 1di 1fj 13d 1di 1fj 1di 1fj 13d 1-d3 rs 2*lo 2*jx k4 jx nu jq d3 3*jx 1js 1ai 1cs 1l6 4*z0
3*11b 1-3*11b 16r z0 16r 16q 16r 16q 1di 1fj 1di 1fj 1di 1fj 1di 1fj 11b q0 9t 1-4*11h 3*11d 1-3*11d 1b5 19i 1b5 19i 1b5 19i 1bi 1a3 1bi 1a3 1ci 1a3
1ci 1a3 1ci m8 2*18x 18b 19k 9*w6 180 13g 15q 15r 15q 15r 180 13g 180 13g 15q 15r 15q 15r 15q 2*kt 12f 13o 12f 13o 9*w6 180 13g 15q 15r 15q 15r 180 13g
180 13g 15q 15r 15q 15r 15q 2*m9 v8 3*si 3*v8 2*si 12c 13c 127 133 127 133 12c 13c 12c 13c 127 133 127 133 127 jr q0 jr 2-9*17l 1ir 1gz 1i8 17l 1i8
2*17l uq n6 uq 9*17l 1ir 1gz 1i8 1gq 1i8 1gq 1ir 1gz 1ir 1gz 1jg 1gq 1jg 1gq uq 1-11b 9*uv 16q 12l 14j 13h 14j 13h 16q 12l 16q 12l 14j 13h 14j 13h 14j
lf li lf 8-3*10g 4*19n 1ak 18n 1ak 18n 1ak 18n 1md 1ka 1md 1ka 1md 1ka 1md 1ka ws 9*w3 178 13z 15r 15w 15r 15w 178 13z 178 13z 15r 15w 15r 15w 15r lf
1-jx os 6*1av 6*uv 16q 12l lf 1-11b 4*z0 4*116 1ba 1fj q0 6*11h 4*11d 1ci 1a3 q0 9-7*16i su 12i os 7*1hl 169 4-4*16i 3*1sh 2*1fa 2*1sh zt 1ix 9-6*17l
uq 7*wx lf w6 1a-13f 2-139 2s-2*nz 12-mq 1hl 1v1 2*2bk 2*1ye 2*2bk 9-of p8 10g 1bo 1mw 1y4 p8 10g 1bo 1mv 1y4 pi 10r 1c1 1nb 1yl p8 10g 1bl 1mu 1y4 pi
12i 14d 1po 1mv yz pz py 19f-ua 10q 1e9 u0 s5 2*uz p4 ro e8 k7 tn tu 12m x9 vb s5 3*z0 1gd 1-2*vb qu 2*us tt te 11q 1ci wn ua 15v qv qx 2-tu ua sv qu
u8 wq m1 ve m4 1-ot 2*kd oz o9 2*9i l5 hy rt 2*o4 pd mi jg me jp nl vv 2*k1 kr x6 lx kr 2*lc ig ie kr 95 ls vw kx l6 iy 2*l6 lx f3 kq o1 vw lc 1-kk j2
jq l9 im 95 d9 kq lc kk j2 l2 l9 im c-wi o9 2-j0 1-y5 7-e8 l-kr 2*iy l6 ig f6 bx kr kq dd cr dc dd c0 cr c0 j9 2*vw l0 oj kx 2*l6 ig eo f3 q0 lf ii ks
lc ir mc ir k2 l6 4-6*0 1i-z0 vd z4 wi z4 wi z4 wi zr s5 13f wi 13f wi 13f wi 13f wi 13f wi wc vi wc vi wc vi wc vi wc vi tg i0 13o wi 12i wg 12i wg
12i wg 12i wg 12i wg f3 e8 f3 e8 xk tn xk tn xk tn si eq si eq si e8 si e8 186 1dv 186 1dv 186 1dv 12a wg 12a wg 12a wg 12a wg 14a vb 14a vb 14a vb 14a
vb uv wi uv wi zk l1 zk l1 zk l1 zk l1 wi qo wi qo wi qo wi qo wi qo v9 k2 v9 k2 v9 k2 v9 k2 11h wg 11h wg 11h wg 11h wg 11h wg z0 ua z0 ua 1em 15v 1em
15v 1em 15v 1em 15v 1em 15v z2 ua z2 ua v9 ua z2 qv z2 qv z2 qv wg k2 15v ua vd 3*i0 13c vb z0 vd z0 vd z0 vd z0 vd z0 vd z0 vd z0 vd z0 vd z0 vd z0 vd
z0 vd z0 vd wc vi wc vi wc vi wc vi wc vi wc vi wc vi wc vi f3 e8 f3 e8 14a vb 14a vb 14a vb 14a vb 14a vb 14a vb 14a vb 1ar vb 1ar vb 1ar vb 1ar vb
1ar vb 11h wg 11h wg 17x wg 17x wg 17x wg 17x wg 17x wg v9 ua v9 ua v9 ua v9 ua 13d of 4-8*xr 2*z0 2*18x 13d 150 109 120 6*ro 2-2*10e 1dg 1dw 1a0 1bi
2-8*wg 16u 16r 1jl 1jr 1gk 1hs 1bs 1ch 8*hb jg j5 2*wi t7 up p1 p8 6*vb 2-156 17f 1k1 1ka 1c1 1do 2-8*tm 1-144 1-1f2 1-1ft 1-19y 8*16v 152 176 1jr 1k2
1cf 1dr 1b6 1cr 2*xr ro s2 wg xi 2*hb 2*vb 2*tm 2*16v 2-8*xr 2*z0 2*18x 13d 150 109 120 8*wg 16u 16r 1jl 1jr 1gk 1hs 1bs 1ch 8*16v 152 176 1jr 1k2 1cf
1dr 1b6 1cr 5*xr 1-2*xr 2*z0 10o zg z0 5*pl 2*wg xi 1-2*wg 157 127 1bn 18l 12i 3*pl 4*hb 2-2*hb 2*f3 ob kw 1-3*pl 4*tm 2*wi 2*tm 2*v9 179 168 z2 3*pl
2-3*16v 1-2*16v 1c6 15l 1b8 169 134 2*pl 1-pl 1f7 pl 1f7 gv cs 8j wk g9 a8 53 5*0 2*ih wk pl 2*1f7 2*pl 4*g9 4*qi 2*pl 2*u7 h4 y6 1f7 g9 7*0 a8 1wp 2gu
bm j4 qm bm j4 qm hc 2*kh 16w ou r6 pl 2*155 cs 1f7 pl 8j 2*jz 1b7 2*11i pg wk 3*pl h9 155 pl n0 1f7 155 16w u0 xy 2*16w g9 14t 16w 2*g9 bd 5*0 5-6*0
ki 95 2-6*ki 3*r0 2*ck ke a*ki 3*r0 2*ck 1-k1 lc l6 mq lc kp ls 8i vw ke lx j3 f3 3-18w 4*wk 1dv wk 1t5 1iz 1em 145 4*wk 1t5 4*wk 13m wk 2-3*wk 2-wk
i-2*0 4-2*0 3-2*0 4-0 u-2*1g5 zr 1li wv 1g5 1im vg zr 1cq 1-1el 12m 17i 2*wg o1 zp 10v l5 15v 150 1h9 1f7 zp zw 14a 14u 15o 14j 19w z0 1g7 1j0 1f7 z0
124 tk 2*134 vj hb xk z0 149 100 17r ua v0 149 tg 1ir nn 125 yi nu x0 jg 1be 1p4 zy 119 xi 17g 15i 13o 2*si v9 15x 109 vi 2*hz 1-13x 2-qy 1-2*1dm 1y5
c*1dm t2 f3 p7 za 1b9 z0 1b8 1lb 1vf 1az z2 1br 1lx si zr 13f 186 e8 nf wm 15j ua 15i 1eq 1nx 15x ua 163 1fa e8 s5 wi 1dv 1rr 13f 1rr 100 s4 zr 3-1dm
6-34*16w z0 wk qh 2*wc 18l 2*y9 2*18l 10r 2*18l 10r wk 2*12r yi 3*16w h9 wl 16w 2*w1 3*wm 10k 16n 16w 2*19w 16w 4*pl 4*11h qo 14e 1i4 qo 14e 1i4 3*qo
2*wk db wk 8*16w j7 h*16w 2*16y 2*1f7 k*16w 2*1hl nr v*16w 3*11h 4*16w 2*13y d*16w 4*18l 2*qn 8*18l 6*16w 2*1f7 2*16w qn 3*11h 2*16w 4*160 w1 g9 w1 16w
5*1f7 16w 2*11i 8*16w 2*20t k*16w 5*1f7 18l 10r 2*18l 10r 2*18l 1f7 18l 10r 18l 10r 18l 2*ut wi 4*16w p0 4*jz 4*15e 16w q9 6-1f7 16w 2-4*o0 2*qo
2-2*1n0 20e 1n0 21w 2-20e 18p 1y-hb wi 16v 4-xr 2-12r 9-1n0 c-18p 6-c*pl 7*12e qo v-16w 1cd j-18p 1-13d 2-wk 1l-2*wi 1o-a*19w 46-3k*ut w*13d a*1cd 2*yp
2*1cd 2*s6 4*13d 2*pp 2*13d 2*pp 4*13d 2*pp 2*13d 2*pp 5*13d 18o pa b*18o 2*qz 14i 3*1do 4*jt 2*18o 4*13d u7 5*1cd 3*13d 1la 4*1cd 4*18o 3*13d 2*16i
2*11i 13d 19w 1f7 5*19w tb 19v 19w 2*19h yd 1fu 1rr 1s0 3*19w r9 9*19w v6 19w v6 4*19w y9 127 x9 144 rw 3*19w 10d c*19w 3*1hd 3*19w vf 2*11i 13*19w o5
wo 2*19w o5 ia or 12a 137 e*19w 6*18i f*19w rp 7*19w 1-3*19w zy 1ff 1jr 1o5 1a8 a*16w 177 16w 4*11i 17i 2*11i 7-4*16w u-11i u-4*16w 1-4*16w 2-s*16w
1-z*16w 1-19w 1-4*19w 3-19w 1-3*16w 2*gi 2*rj 2-l*16w a*19w l*16w 3-o*16w 1-e*16w 6-2*jz p-pa 5-2*pc 2*jz 2*sh 4-4*16w 1n9 b*21e 74*11i 6-2*16w 2-2*16w
1g-2*yz 1t-2*11k 21-16w 7*1f7 l-pa e-2*16w 4-3*1f7 9-1vu g*qo i-16w 1m-2*16w h-10*16w d-d*16w 1q-2*16w 5-e*16w 4*16s 4*1cd 4*13d 1cd 4-2*18i 3*18p 1la
1a-2*18i 7f-si e8 si uv zk vd k2 12i wg xk tn z2 qv 140 186 z0 140 11l 1lr 1d8 ua xi t2 xr 1-l7 vb p4 8y m1 wi z2 3k-u9 ug sw us u2 1am w2 1cq uh v2
1ct vq uh 1bf ug 159 1bo tx ub 1b9 1cr 16d ui ug u7 2*ua vr 1b4 u6 u0 tr 1as ui ug ub wu 1a4 a-x3 2*19g yx z0 wi sr 2*z0 2*wc yy 18r z2 p4 z2 2*19g fd
w3 12i xk r0 z2 x0 wc pq 1cr 13u 12a vr f3 13u f3 12i we 2*19g 12i ge 12c 2*19g zr 13a z2 zr vu z0 12i wc 14c t0 14c 9-qd 4o-r6 6-16w 2-4*jz 8-r6
68h-1s*19w h5c-z4 2*uv 13f 2*v9 13o 2*xk q7 zr 100 z2 2*tg 186 12a si wi 2*zk 2*z0 12i 13o q7 1em z2 v9 z4 2*z0 2*wc f3 14a 2*11h si 139 2*fc 2*ui 2*fc
2*u3 90-wi qo i3 hb 4-1oe 1gm 2-1go 1ae 2-1j9 173 1e0 175 a-1id 1ao 1il 1a4 1ob 1fl 14a vb 17s 10h 1xi 1g5 190 r-141 z1 v9 tt 6-z3 wg 2-1xi 1g5 32-f*p9
4-2*iw 3*cx 2-jq i8 2*o5 12i wg 18y 10b vg ro 4-p4 qo 1rz 1ef 1pl 1eo 1mh 1e8 1dq 15v 1dq 15v 1d3 15v 100 s4 xk tu 4-yt k2 tr lu 15a 101 2-1xi 1g5 uv
wi 11k 13n 2-14a wi c-uz wi uz wi o-si e8 11n wg 5-h9 j9 ki e2 z3 oy 1-13j y4 e-13o wi xk tn 12a wg zk l1 wi qo 150 25-ti wz 1au tg uv 186 f3 1pe
e0w-ax c6 d5 di do c6 ax c6 d5 di d5 c6 ax c6 d5 di d5 c6 ax c6 do di d5 c6 ax e2 6e-4*1e0 sc-2*tp vx 19i ty tp xf 195 sf tp 1nt u5 u7 18i tp u6 1ar u7
11f tu 18n u6 19t 2*u5 u8 x8 u5 u6 un u7 qf to tw 2*tp tq wo 1cw 1-1bo 15d a*q0 3*qi 5*149 6*rz hv-vb u2-z9 2*w9 2*1di z4 182 c-2*1pi 1p8 1oq 26a 5-bg
0 gx wj 17t 13m 1ad 13i 176 17r 15b 18t 16w 4*109 3*y8 tl l3 ry xg i7 kr 1-x7 gw ri r2 t3 1-yr 1-kg x8 1-wr vz 1-ud 10b sw 109 xn dy tl r2 vz w7 2-1c7
1e9 e9 fg 1c7 1e9 e9 fg 1c7 1e9 e9 fg 1c7 1e9 e9 fg 1c7 1e9 e9 fg 1c7 1e9 e9 fg 1h2 1h0 oh pw 1h2 1h0 oh pw 2*x1 vn 3*x1 vn 3*x1 vn 3*x1 vn x1 ms qv ms
qv ms qv ms qv oq s9 oq s9 2*19t od s9 2*19t od s9 2*19t od s9 2*19t od s9 11l 12z 11l 12z e9 fg 6-zr wc r0 nl 11-167 175 od s9 oq qg oq qg oq qg 1-oq
qg 4-142 16o e9 fg e9 fg i-142 16o e9 fg e8-g*0 g-4*0 24-3*f0 de f0 1-a*f0 o2 e8 fl e8 fl oq qg e8 fl 142 16o e9 fg e8 fl 1c7 1e9 e9 fg qt rg 1c7 1e9
e9 fg 1c7 1e9 e9 fg 2*x1 vn 3*x1 vn 3*x1 vn x1 ms qv ms qv oq s9 oq s9 1qi 1t9 16w 19o 1qi 1t9 16w 19o 1pw 1qq 17h 18e 1pw 1qq 17h 18e 1bc 1cl 14r 160
1bc 1cl 14r 160 uj r9 uj op uj r9 qr op 1h2 1h0 oh pw 13q 16p oh pw 167 175 od s9 117 12r fl gy vp y2 rf tl 11l 12z e9 fg qt rg r0 nl oq qg 142 16o 142
16o e9 fg t7 uj t7 uj t7 uj t7 uj 2-0 6x-4*0 1gi`,
	},
} as const;
