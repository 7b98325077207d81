/**
 * Moves labels along one direction so that none covers another, each as near to where it belongs as may be.
 *
 * `wanted`: the middle of each label; `size`: what each takes up; `from`, `to`: where they must stay, as far as there is
 * room. Returns the middles in the order given. Labels that touch form a block, which sits at the mean of its wishes.
 */
export function spreadApart({
  wanted,
  size,
  from,
  to
}: {
  readonly wanted: readonly number[];
  readonly size: number;
  readonly from: number;
  readonly to: number;
}): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const blocks: { members: number[]; middle: number }[] = [];
  const clamp = (middle: number, count: number): number => {
    const half = (count * size) / 2;
    return Math.max(from + half, Math.min(to - half, middle));
  };
  for (const index of order) {
    let block = { members: [index], middle: clamp(wanted[index] ?? 0, 1) };
    for (let before = blocks.at(-1); before !== undefined; before = blocks.at(-1)) {
      const reach = ((before.members.length + block.members.length) * size) / 2;
      if (block.middle - before.middle >= reach) break;
      blocks.pop();
      const members = [...before.members, ...block.members];
      // A label's wish for the block's middle is its own, less its offset within the block.
      const wishes = members.map(
        (member, at) => (wanted[member] ?? 0) - (at - (members.length - 1) / 2) * size
      );
      const mean = wishes.reduce((sum, wish) => sum + wish, 0) / members.length;
      block = { members, middle: clamp(mean, members.length) };
    }
    blocks.push(block);
  }
  const placed = new Array<number>(wanted.length).fill(0);
  for (const { members, middle } of blocks) {
    members.forEach((member, at) => {
      placed[member] = middle + (at - (members.length - 1) / 2) * size;
    });
  }
  return placed;
}
