// Solves the networks of networks.json with the EPANET engine and writes the flows, in m³/s and m, to the standard output.
// `node solve.mjs > flows.json` renews the stored vectors.

import { definitions, InitHydOption, LinkProperty, NodeProperty, open } from "./model.mjs";

const flow = (project, id) => project.getLinkValue(project.getLinkIndex(id), LinkProperty.Flow) / 1000;
const head = (project, id) => project.getNodeValue(project.getNodeIndex(id), NodeProperty.Head);

const results = [];
let version;
for (const d of definitions) {
    const { workspace, project } = await open({ ...d, headError: 1e-9 });
    version = workspace.version;
    project.initH(InitHydOption.InitFlow);
    project.runH();
    results.push({
        name: d.name,
        pump_flow: flow(project, "PU"),
        pump_head: head(project, "S") - 10,
        head_across: head(project, "S") - head(project, "T"),
        manifolds: d.manifolds.map((manifold, m) => manifold.loops.map((_, i) => flow(project, `L${m}_${i}`))),
        ...(d.spring_bypass && { spring_bypass_flow: flow(project, "SPRING") }),
        ...(d.fixed_bypass_kv && { fixed_bypass_flow: flow(project, "FIXED") }),
    });
    project.closeH();
    project.close();
}

const text = JSON.stringify({ engine: version, gravity: "32.2 ft/s²", units: "m³/s, m", results }, null, 1);
process.stdout.write(text.replace(/\[\s+([^[\]{}]+?)\s+\]/g, (_, s) => `[${s.replace(/\s+/g, " ")}]`) + "\n");
