// Times the EPANET engine after one loop's valve has moved, on networks of one manifold: cold (flows begun anew) and warm (from
// the last flows), accuracy 1e-5. Prints one JSON object: for each count and pattern the microseconds of a solve.
// Usage: node time.mjs networks-to-time.json

import { readFileSync } from "node:fs";
import { InitHydOption, LinkProperty, loopCoefficient, open } from "./model.mjs";

const { cases } = JSON.parse(readFileSync(process.argv[2], "utf8"));
const rounds = 9;

// The best of several rounds: what the machine's other work adds to a round says nothing about the solver.
function best(project, link, settings, option) {
    let least = Infinity;
    for (let round = 0; round < rounds; round++) {
        let solves = 0;
        const start = process.hrtime.bigint();
        let spent = 0n;
        while (spent < 60_000_000n) {
            for (const k of settings) {
                project.setLinkValue(link, LinkProperty.MinorLoss, k);
                project.initH(option);
                project.runH();
            }
            solves += settings.length;
            spent = process.hrtime.bigint() - start;
        }
        least = Math.min(least, Number(spent) / 1000 / solves);
    }
    return least;
}

const results = [];
for (const c of cases) {
    const { project } = await open(c.network);
    const link = project.getLinkIndex("L0_0");
    const loop = c.network.manifolds[0].loops[0];
    const settings = c.openings.map(opening => loopCoefficient(loop, loop.kv * opening));
    project.initH(InitHydOption.InitFlow);
    project.runH();
    results.push({
        name: c.name,
        cold_us: best(project, link, settings, InitHydOption.InitFlow),
        warm_us: best(project, link, settings, InitHydOption.NoSave),
    });
    project.closeH();
    project.close();
}
process.stdout.write(JSON.stringify({ results }) + "\n");
