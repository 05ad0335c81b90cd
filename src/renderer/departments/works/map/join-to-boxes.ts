import type { Box, MapLayout, Point } from './places.ts';

/** A line before its ends are known. */
export interface Course {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** Points that the line passes between its boxes. */
  readonly between: readonly Point[];
  readonly label: Point | undefined;
}

/** Begins and ends each line on the lower or upper edge of its boxes, side by side in the order in which they lie. */
export function joinToBoxes(courses: readonly Course[], boxes: Readonly<Record<string, Box>>): MapLayout['lines'] {
  interface Joint {
    readonly course: Course;
    readonly end: 'from' | 'to';
    /** Where the line comes from or goes to next. */
    readonly beside: number;
  }
  const sides = new Map<string, Joint[]>();
  const middle = (box: Box): number => box.x + box.width / 2;
  const isDown = ({ from, to }: Course): boolean => boxes[from]!.y <= boxes[to]!.y;
  for (const course of courses) {
    const [from, to] = [boxes[course.from]!, boxes[course.to]!];
    const joints = [
      { course, end: 'from', beside: course.between[0]?.x ?? middle(to) },
      { course, end: 'to', beside: course.between.at(-1)?.x ?? middle(from) },
    ] as const;
    for (const joint of joints) {
      const side = `${(joint.end === 'from') === isDown(course) ? 'below' : 'above'} ${course[joint.end]}`;
      const list = sides.get(side);
      if (list === undefined) sides.set(side, [joint]);
      else list.push(joint);
    }
  }
  const ends = new Map<string, Point>();
  for (const [side, joints] of sides) {
    joints.sort((a, b) => a.beside - b.beside);
    for (const [i, { course, end }] of joints.entries()) {
      const box = boxes[course[end]]!;
      const x = box.x + (box.width * (i + 1)) / (joints.length + 1);
      ends.set(`${course.id} ${end}`, { x, y: side.startsWith('below') ? box.y + box.height : box.y });
    }
  }
  return Object.fromEntries(
    courses.map(({ id, between, label }) => [
      id,
      { points: [ends.get(`${id} from`)!, ...between, ends.get(`${id} to`)!], label },
    ]),
  );
}
