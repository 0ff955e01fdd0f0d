/** The few parts of `three` that tests use as an outside check. The package ships no types. */
declare module 'three' {
  export class Euler {
    constructor(x: number, y: number, z: number, order: string);
  }
  export class Vector3 {
    constructor(x?: number, y?: number, z?: number);
    readonly x: number;
    readonly y: number;
    readonly z: number;
    clone(): Vector3;
    add(other: Vector3): Vector3;
    sub(other: Vector3): Vector3;
    cross(other: Vector3): Vector3;
    negate(): Vector3;
    normalize(): Vector3;
    applyAxisAngle(axis: Vector3, angle: number): Vector3;
    applyEuler(euler: Euler): Vector3;
    angleTo(other: Vector3): number;
    distanceTo(other: Vector3): number;
    dot(other: Vector3): number;
    length(): number;
  }
  export class Line3 {
    constructor(start: Vector3, end: Vector3);
    readonly start: Vector3;
    readonly end: Vector3;
    distanceSqToLine3(other: Line3): number;
  }
  export class Plane {
    readonly normal: Vector3;
    setFromCoplanarPoints(a: Vector3, b: Vector3, c: Vector3): Plane;
  }
}
