import {
	createHash,
	createPrivateKey,
	generateKeyPairSync,
	type KeyObject,
	randomBytes,
	sign,
	X509Certificate,
} from 'node:crypto';
import { isIP } from 'node:net';
import { AsnConvert, OctetString } from '@peculiar/asn1-schema';
import {
	AlgorithmIdentifier,
	AttributeTypeAndValue,
	AttributeValue,
	AuthorityKeyIdentifier,
	BasicConstraints,
	Certificate,
	ExtendedKeyUsage,
	Extension,
	Extensions,
	GeneralName,
	GeneralSubtree,
	GeneralSubtrees,
	id_ce_authorityKeyIdentifier,
	id_ce_basicConstraints,
	id_ce_extKeyUsage,
	id_ce_keyUsage,
	id_ce_nameConstraints,
	id_ce_subjectAltName,
	id_ce_subjectKeyIdentifier,
	id_kp_serverAuth,
	KeyIdentifier,
	KeyUsage,
	KeyUsageFlags,
	Name,
	NameConstraints,
	RelativeDistinguishedName,
	SubjectAlternativeName,
	SubjectKeyIdentifier,
	SubjectPublicKeyInfo,
	TBSCertificate,
	Validity,
	Version,
} from '@peculiar/asn1-x509';

/*
 * Certificates as RFC 5280 writes them: a root of the shop's own, and by it one for its server.
 */

/** A certificate with its key, both as PEM. */
export interface Signed {
	readonly certificate: string;
	readonly key: string;
}

/** What a certificate says, besides its key. Times are milliseconds since 1970. */
interface Said {
	readonly name: string;
	readonly from: number;
	readonly until: number;
	readonly more: readonly Extension[];
}

/** ECDSA with SHA-256 (RFC 5758), and the attribute of a common name (X.520). */
const ECDSA_SHA256 = new AlgorithmIdentifier({ algorithm: '1.2.840.10045.4.3.2' });
const COMMON_NAME = '2.5.4.3';

/**
 * A root that may vouch for nothing but these names and addresses: who got hold of its key could
 * pass himself off as no other place.
 *
 * @param permits names with all that end in them, and addresses by range: 'local', '10.0.0.0/8'
 */
export function makeRoot(
	said: Omit<Said, 'more'> & { readonly permits: readonly string[] },
): Signed {
	const pair = newPair();
	const uses = KeyUsageFlags.keyCertSign | KeyUsageFlags.cRLSign;
	const permitted = said.permits.map((name) => new GeneralSubtree({ base: general(name) }));
	const more = [
		extension(
			id_ce_basicConstraints,
			new BasicConstraints({ cA: true, pathLenConstraint: 0 }),
			true,
		),
		extension(id_ce_keyUsage, new KeyUsage(uses), true),
		extension(
			id_ce_nameConstraints,
			new NameConstraints({ permittedSubtrees: new GeneralSubtrees(permitted) }),
			true,
		),
	];
	return signed({ ...said, more }, pair, { name: named(said.name), key: pair.privateKey });
}

/** A certificate for a server of these names, which the root vouches for. */
export function makeServer(
	root: Signed,
	said: Omit<Said, 'more'> & { readonly names: readonly string[] },
): Signed {
	const by = new X509Certificate(root.certificate);
	const more = [
		extension(id_ce_basicConstraints, new BasicConstraints({ cA: false }), true),
		extension(id_ce_keyUsage, new KeyUsage(KeyUsageFlags.digitalSignature), true),
		extension(id_ce_extKeyUsage, new ExtendedKeyUsage([id_kp_serverAuth])),
		extension(id_ce_subjectAltName, new SubjectAlternativeName(said.names.map(general))),
		extension(
			id_ce_authorityKeyIdentifier,
			new AuthorityKeyIdentifier({ keyIdentifier: new KeyIdentifier(markOf(by.publicKey)) }),
		),
	];
	const name = AsnConvert.parse(by.raw, Certificate).tbsCertificate.subject;
	return signed({ ...said, more }, newPair(), { name, key: createPrivateKey(root.key) });
}

/** What a root may vouch for, as it was told when it was made. */
export function permitsOf(certificate: string): string[] {
	const { extensions } = AsnConvert.parse(
		new X509Certificate(certificate).raw,
		Certificate,
	).tbsCertificate;
	const found = extensions?.find(({ extnID }) => extnID === id_ce_nameConstraints);
	if (!found) return [];
	const { permittedSubtrees } = AsnConvert.parse(found.extnValue, NameConstraints);
	return (permittedSubtrees ?? []).map(({ base }) => base.dNSName ?? base.iPAddress ?? '');
}

function signed(
	said: Said,
	{ publicKey, privateKey }: Pair,
	by: { readonly name: Name; readonly key: KeyObject },
): Signed {
	const mark = new SubjectKeyIdentifier(markOf(publicKey));
	const tbsCertificate = new TBSCertificate({
		version: Version.v3,
		serialNumber: bufferOf(serial()),
		signature: ECDSA_SHA256,
		issuer: by.name,
		validity: new Validity({ notBefore: new Date(said.from), notAfter: new Date(said.until) }),
		subject: named(said.name),
		subjectPublicKeyInfo: AsnConvert.parse(spkiOf(publicKey), SubjectPublicKeyInfo),
		extensions: new Extensions([...said.more, extension(id_ce_subjectKeyIdentifier, mark)]),
	});
	const told = Buffer.from(AsnConvert.serialize(tbsCertificate));
	const signatureValue = bufferOf(sign('sha256', told, by.key));
	const whole = new Certificate({
		...{ tbsCertificate, signatureAlgorithm: ECDSA_SHA256, signatureValue },
	});
	return {
		certificate: new X509Certificate(Buffer.from(AsnConvert.serialize(whole))).toString(),
		key: String(privateKey.export({ type: 'pkcs8', format: 'pem' })),
	};
}

interface Pair {
	readonly publicKey: KeyObject;
	readonly privateKey: KeyObject;
}

/** Of the curve that every browser takes. */
const newPair = (): Pair => generateKeyPairSync('ec', { namedCurve: 'P-256' });

const extension = (extnID: string, value: unknown, critical = false): Extension =>
	new Extension({ extnID, critical, extnValue: new OctetString(AsnConvert.serialize(value)) });

/** A name of the net, or an address or a range of them. */
const general = (name: string): GeneralName =>
	isIP(name.replace(/\/\d+$/, '')) === 0
		? new GeneralName({ dNSName: name })
		: new GeneralName({ iPAddress: name });

const named = (name: string): Name =>
	new Name([
		new RelativeDistinguishedName([
			new AttributeTypeAndValue({
				...{ type: COMMON_NAME, value: new AttributeValue({ utf8String: name }) },
			}),
		]),
	]);

/** Above nothing, and read as no number below it. */
function serial(): Buffer {
	const bytes = randomBytes(16);
	bytes[0] = (bytes.readUInt8(0) & 0x7f) | 0x40;
	return bytes;
}

const spkiOf = (key: KeyObject): Buffer => key.export({ type: 'spki', format: 'der' });

/** By which certificates name each other's keys: any hash of the key does (RFC 7093). */
const markOf = (key: KeyObject): Buffer =>
	createHash('sha256').update(spkiOf(key)).digest().subarray(0, 20);

const bufferOf = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer;
