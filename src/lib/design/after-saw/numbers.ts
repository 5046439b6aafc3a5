/** Numbers of what is made in one part, running on from face to face. */
export class Numbers {
	private next = 1;

	/** The first of so many. */
	take(many = 1): number {
		const first = this.next;
		this.next += many;
		return first;
	}
}
