// The long section as lines in the world: station (m, from the crest) and level (m). What the engine has computed is taken as
// it is. Indicative, for the eye alone: the drawdown between reservoir and chute, and the body of the dam.
import type { Water } from "./interpolate";
import type { Levels, Option } from "./types";

export type Point = [number, number];

export interface Structure {
  face: Point[];
  body: Point[];
  slab: Point[];
  river_bed: Point[];
  wall: Point[];
  floor: Point[];
  elements: { id: string; name: string; kind: string; outline: Point[] }[];
  toe: number;
  end: number;
  far: number;
  first: number;
  last: number;
  upstream: number;
  approach: number;
  thickness: number;
  bottom: number;
  bottom_of_end: number;
  top: number;
}

const river_rise = 4; // horizontal to 1 vertical, as in the report's figure

export function structure(option: Option, levels: Levels, highest_reservoir: number): Structure {
  const toe = option.chute_end_station;
  const apron = option.apron_level;
  const end = toe + option.length;
  const floor = option.floor.map((p): Point => [toe + p.x, apron + p.z]);
  const [start, close] = [floor[0] ?? [toe, apron], floor[floor.length - 1] ?? [end, apron]];
  const takes_crest = option.action === "blocks" || option.action === "fall";
  const paved = option.action !== "pool";
  const thickness = Math.max(option.quantities.slab_thickness ?? 0, 0.01 * option.length);
  const crest = option.water?.crest ?? [];
  const upstream = crest[0]?.[0] ?? 0;
  const approach = levels.approach_floor;
  const run = option.action === "jet" ? 1e-3 : river_rise * Math.abs(levels.river_bed - close[1]);
  const last = end + run + 0.3 * option.length;
  const head = Math.max(highest_reservoir - levels.crest, 1);
  const first = upstream - Math.max(3 * head, 0.14 * last);
  const far = last + 2 * (last - first);
  const face: Point[] = takes_crest ? [[0, levels.crest]] : crest.map(([x, z]) => [x, z]);
  const longest = takes_crest ? [] : (option.water?.discharges[0]?.chute ?? []);
  for (const [x, z] of longest) if (face.length === 0 || (x > face[face.length - 1][0] + 1e-6 && x < start[0])) face.push([x, z]);
  face.push(start);
  const foot: Point = [upstream, Math.min(approach, face[0][1]) - thickness];
  const heel: Point = [start[0], start[1] - thickness];
  // Under a bucket the slab is level, elsewhere it follows the floor.
  const under = (p: Point): Point => [p[0], (floor.length > 4 ? Math.min(apron, p[1]) : p[1]) - thickness];
  const walls_follow = option.action === "blocks";
  const base = Math.min(foot[1], heel[1]);
  const body: Point[] = [...face, heel, [heel[0], base], [upstream, base]];
  return {
    face,
    body,
    slab: paved ? [...floor, ...[...floor].reverse().map(under)] : [],
    floor,
    river_bed: [close, [close[0] + run, levels.river_bed], [far, levels.river_bed]],
    wall: !(option.wall_height > 0) ? [] : walls_follow ? floor.map(([x, z]): Point => [x, z + option.wall_height]) : [[start[0], option.wall_top_level], [end, option.wall_top_level]],
    elements: option.elements.flatMap((e, index) =>
      Array.from({ length: e.rows }, (_, row) => ({
        id: `${index}-${row}`,
        name: e.name,
        kind: e.kind,
        outline: e.profile.map((p): Point => [toe + p.x + row * (e.row_step ?? 0), apron + p.z - row * (e.row_drop ?? 0)]),
      })),
    ),
    toe, end, far, first, last, upstream, approach, thickness,
    bottom: Math.min(apron - thickness, foot[1], heel[1], ...floor.map((p) => p[1] - thickness)),
    bottom_of_end: Math.min(apron, close[1]) - thickness,
    top: Math.max(highest_reservoir, option.wall_top_level),
  };
}

/** A cubic that leaves flat and arrives with the slope given (fall per length). */
export function drawdown(from: Point, to: Point, end_slope: number, count = 16): Point[] {
  const span = to[0] - from[0];
  const points: Point[] = [];
  for (let i = 0; i <= count; ++i) {
    const t = i / count;
    const h0 = (1 + 2 * t) * (1 - t) * (1 - t);
    points.push([from[0] + span * t, h0 * from[1] + (1 - h0) * to[1] + t * t * (1 - t) * end_slope * span]);
  }
  return points;
}

export interface Surface {
  line: Point[];
  energy: Point[];
  /** Indicative: what turns above the straight line from the front to the end of the roller. */
  roller: Point[];
  front: Point;
}

/** Water surface, energy line and jump of one discharge. */
export function surface(s: Structure, option: Option, levels: Levels, water: Water): Surface {
  const apron = option.apron_level;
  const { flow, chute, jump } = water;
  const front = s.toe + flow.front_station;
  const head = Math.max(water.reservoir_level - levels.crest, 0);
  const line: Point[] = [[s.first - 2 * (s.last - s.first), water.reservoir_level]];
  if (option.action === "blocks" || option.action === "fall") return fromCrest(s, option, levels, water, line);
  if (chute.length > 1) {
    const slope = (chute[0][3] - chute[1][3]) / Math.max(chute[1][2] - chute[0][2], 1e-9);
    const start = Math.max(-1.6 * head, 0.9 * s.first);
    line.push(...drawdown([Math.min(start, chute[0][2] - 0.1), water.reservoir_level], [chute[0][2], chute[0][3]], slope));
  }
  for (const row of chute.slice(1)) if (row[2] < Math.min(front, s.toe) && row[2] > line[line.length - 1][0]) line.push([row[2], row[3]]);
  if (option.action !== "level_jump" && option.action !== "sloping_jump") return withoutJump(s, option, water, line);
  if (option.action === "sloping_jump") {
    line.push([front + 0.7 * flow.jump_length, water.tailwater_level], [s.far, water.tailwater_level]);
    return { line, energy: [], roller: [], front: [front, apron + flow.front_height] };
  }
  if (flow.front_station >= 0) {
    line.push([s.toe, Math.min(line[line.length - 1][1], apron + flow.y1)]);
    if (front > s.toe) line.push([front, apron + flow.y1]);
  }
  const profile: Point[] = jump.map((depth, i) => [front + (flow.jump_length * i) / (jump.length - 1), apron + depth]);
  line.push(...profile.filter((p) => p[0] >= line[line.length - 1][0]), [s.far, water.tailwater_level]);

  const energy: Point[] = [[line[0][0], water.reservoir_level], [Math.min(0, chute[0]?.[0] ?? 0), water.reservoir_level]];
  for (const row of chute) if (row[0] < Math.min(front, s.toe)) energy.push([row[0], row[4]]);
  const before = front < s.toe ? energy[energy.length - 1][1] : apron + flow.energy_head;
  const after = Math.max(apron + flow.energy_head - flow.energy_loss, water.tailwater_level);
  for (let i = 0; i <= 20; ++i) {
    const x = i / 10; // lengths of the roller; the loss is greatest at its start
    energy.push([front + x * Math.max(flow.roller_length, 1e-6), before - ((before - after) * Math.tanh(2.2 * x)) / Math.tanh(4.4)]);
  }
  energy.push([s.far, after]);
  const roller = profile.filter((p) => p[0] <= front + flow.roller_length);
  return { line, energy, roller, front: [front, apron + Math.max(flow.front_height, 0)] };
}

/** Indicative: the chute's water down to the tailwater, or over the lip of a bucket. */
function withoutJump(s: Structure, option: Option, water: Water, line: Point[]): Surface {
  const above = line.filter((p) => p[1] >= water.tailwater_level);
  if (option.action === "jet") for (const [x, z] of s.floor) if (x > above[above.length - 1][0]) above.push([x, z + water.flow.y1]);
  const last = above[above.length - 1];
  const reach = option.action === "jet" ? 2 * Math.max(last[1] - water.tailwater_level, 1) : 1e-3;
  above.push([last[0] + reach, water.tailwater_level], [s.far, water.tailwater_level]);
  return { line: above, energy: [], roller: [], front: last };
}

/** Indicative: water taken from the crest, over blocks or in a free fall. */
function fromCrest(s: Structure, option: Option, levels: Levels, water: Water, line: Point[]): Surface {
  const depth = option.action === "blocks" ? water.flow.y1 : Math.max(water.reservoir_level - levels.crest, 0) * 0.5;
  line.push(...drawdown([-4 * depth, water.reservoir_level], [0, levels.crest + depth], 0.3));
  if (option.action === "blocks") for (const [x, z] of s.floor) if (x > 0) line.push([x, Math.max(z + depth, water.tailwater_level)]);
  const last = line[line.length - 1];
  line.push([last[0] + (option.action === "fall" ? 1.5 * depth : 1e-3), water.tailwater_level], [s.far, water.tailwater_level]);
  return { line, energy: [], roller: [], front: last };
}

/** Level of a line at a station. */
export function levelAt(line: Point[], x: number): number {
  for (let i = 1; i < line.length; ++i)
    if (x <= line[i][0]) {
      const [a, b] = [line[i - 1], line[i]];
      const share = Math.min(Math.max((x - a[0]) / Math.max(b[0] - a[0], 1e-9), 0), 1);
      return a[1] + share * (b[1] - a[1]);
    }
  return line[line.length - 1]?.[1] ?? 0;
}

/** The bed under the water, upstream to downstream, never above the surface. */
export function bedUnder(s: Structure, line: Point[]): Point[] {
  const bed: Point[] = [[line[0][0], s.approach], [s.upstream, s.approach], ...s.face, ...s.floor, ...s.river_bed];
  return bed.map(([x, z]) => [x, Math.min(z, levelAt(line, x))]);
}
