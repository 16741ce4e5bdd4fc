const NODES = 16;

/**
 * Integral of a smooth function over consecutive stretches between `breaks` (ascending), each cut into `panels`
 * equal parts with a 16-point Gauss-Legendre rule (NIST DLMF 3.5.15).
 */
export function integrate(f: (x: number) => number, breaks: readonly number[], panels: number): number {
  gaussLegendre ??= nodesAndWeights();
  const { nodes, weights } = gaussLegendre;
  let sum = 0;
  for (let i = 1; i < breaks.length; i++) {
    const width = (breaks[i]! - breaks[i - 1]!) / panels;
    for (let panel = 0; panel < panels; panel++) {
      const middle = breaks[i - 1]! + (panel + 0.5) * width;
      let part = 0;
      for (let k = 0; k < NODES; k++) part += weights[k]! * f(middle + (nodes[k]! * width) / 2);
      sum += (part * width) / 2;
    }
  }
  return sum;
}

interface Rule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/** Worked out at the first integral: most commands need none. */
let gaussLegendre: Rule | null = null;

/** Nodes on -1 to 1 and their weights: roots of the Legendre polynomial, by Newton's method. */
function nodesAndWeights(): Rule {
  const nodes = new Float64Array(NODES);
  const weights = new Float64Array(NODES);
  for (let i = 0; i < NODES; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (NODES + 0.5));
    for (let round = 0; round < 10; round++) {
      const { value, slope } = legendre(x);
      x -= value / slope;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * legendre(x).slope ** 2);
  }
  return { nodes, weights };
}

function legendre(x: number): { value: number; slope: number } {
  let before = 1;
  let value = x;
  for (let k = 2; k <= NODES; k++)
    [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  return { value, slope: (NODES * (x * value - before)) / (x * x - 1) };
}
