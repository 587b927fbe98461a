// Builds a network for the EPANET engine from a definition in networks.json (SI units).
//
// reservoir -> pump -> S -> [branch -> M] -> loops -> T -> mains -> reservoir, everything at one height. Bypasses run from S
// to T. The mains' supply and return are one pipe, as in the plant, since only their sum counts.
//
// The package is looked up in the folder that ENGINE_HOME names (where `npm ci` was run), else beside this file.

import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

export const here = path.dirname(fileURLToPath(import.meta.url));
const home = process.env.ENGINE_HOME ?? here;
const lookUp = createRequire(path.join(home, "x.cjs"));
const { Project, Workspace, LinkProperty, NodeProperty, InitHydOption } = await import(
    pathToFileURL(lookUp.resolve("epanet-js").replace("index.cjs", "index.mjs")).href);

export { LinkProperty, NodeProperty, InitHydOption };

/** The engine's own acceleration of gravity: 32.2 ft/s², in m/s². */
export const gravity = 32.2 * 0.3048;

export const definitions = JSON.parse(readFileSync(path.join(here, "networks.json"), "utf8")).networks;

/** Loss coefficient K on a diameter (m) of a valve of kv m³/h at 1 bar (IEC 60534-1). */
export function lossCoefficient(kv, diameter) {
    const perFlowSquare = 100 * 3600 * 3600 / (gravity * kv * kv);
    return perFlowSquare * gravity * Math.PI ** 2 * diameter ** 4 / 8;
}

/** K of a loop's pipe: its fittings and its valve. */
export function loopCoefficient(loop, kv) {
    return loop.k + (kv === undefined ? 0 : lossCoefficient(kv, loop.diameter_m));
}

const pipe = (id, from, to, p, k, status) =>
    ` ${id} ${from} ${to} ${p.length_m} ${p.diameter_m * 1000} ${p.roughness_m * 1000} ${k} ${status}`;

// The spring's flow by head, Q = x·Kvs·√Δp, turned round into the table of head by flow that the engine takes.
function springTable(spring, density) {
    const pascalPerM = density * gravity;
    const opening = spring.opening_pa / pascalPerM;
    const full = (spring.opening_pa + spring.band_pa) / pascalPerM;
    const rows = [` BYP 0 ${opening}`];
    for (let i = 1; i <= 400; i++) {
        const head = opening + (full - opening) * (i / 400);
        const litres = 1000 * (i / 400) * spring.kvs / 3600 * Math.sqrt(gravity * head / 100);
        rows.push(` BYP ${litres} ${head}`);
    }

    return rows;
}

export function inputFile(d) {
    const [nodes, pipes, valves, curves] = [[" S 0 0", " T 0 0"], [], [], []];
    d.manifolds.forEach((manifold, m) => {
        const end = manifold.branch ? `M${m}` : "S";
        if (manifold.branch) {
            nodes.push(` M${m} 0 0`);
            pipes.push(pipe(`B${m}`, "S", end, manifold.branch, manifold.branch.k, "Open"));
        }

        manifold.loops.forEach((loop, i) => pipes.push(
            pipe(`L${m}_${i}`, end, "T", loop, loopCoefficient(loop, loop.kv), loop.open === false ? "Closed" : "Open")));
    });
    pipes.push(pipe("MAINS", "T", "RB", d.mains, d.mains.k, "Open"));
    for (const [flow, head] of d.pump_curve) {
        curves.push(` PUMP ${flow * 1000} ${head}`);
    }

    if (d.spring_bypass) {
        valves.push(" SPRING S T 20 GPV BYP 0");
        curves.push(...springTable(d.spring_bypass, d.density_kgm3));
    }

    if (d.fixed_bypass_kv) {
        valves.push(` FIXED S T 20 TCV ${lossCoefficient(d.fixed_bypass_kv, 0.02)} 0`);
    }

    return [
        "[JUNCTIONS]", ...nodes, "[RESERVOIRS]", " RA 10", " RB 10", "[PIPES]", ...pipes,
        "[PUMPS]", " PU RA S HEAD PUMP", "[VALVES]", ...valves, "[CURVES]", ...curves,
        "[OPTIONS]", " Units LPS", " Headloss D-W", ` Viscosity ${d.viscosity_m2s}`, " Trials 200",
        ` Accuracy ${d.accuracy ?? 1e-5}`, ...(d.headError ? [` HEADERROR ${d.headError}`, ` FLOWCHANGE ${d.headError}`] : []),
        "[TIMES]", " Duration 0", "[REPORT]", " Status No", " Messages No", "[END]",
    ].join("\n");
}

/** Opens a definition, ready to be solved. */
export async function open(d) {
    const workspace = new Workspace();
    await workspace.loadModule();
    const project = new Project(workspace);
    workspace.writeFile("net.inp", inputFile(d));
    project.open("net.inp", "report.rpt", "out.bin");
    project.openH();
    return { workspace, project };
}
