// Writes networks.json: the reference networks, all invented, in SI units. Run `node networks.mjs`, then `node solve.mjs`.

import { writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

// Kinematic viscosity m²/s and density kg/m³: water from IAPWS-IF97 and R12-08 at 2 bar (the Python package iapws 1.5.2);
// propylene glycol from M. Melinder's polynomials, evaluated by ../glycol.py.
const water40 = { celsius: 40, viscosity_m2s: 6.5783e-7, density_kgm3: 992.27 };
const water35 = { celsius: 35, viscosity_m2s: 7.2341e-7, density_kgm3: 994.08 };
const water20 = { celsius: 20, viscosity_m2s: 1.00332e-6, density_kgm3: 998.25 };
const glycol30 = { celsius: 35, glycol_share: 0.3, viscosity_m2s: 1.779595e-6, density_kgm3: 1016.23 };
const glycol50 = { celsius: 10, glycol_share: 0.5, viscosity_m2s: 1.012048e-5, density_kgm3: 1045.26 };

const litresPerMinute = 1 / 60000;
const pipe = (length_m, diameter_m, k, roughness_m = 1.5e-6) => ({ length_m, diameter_m, roughness_m, k });

// The middle point at half the last flow and three quarters of the head makes the square law, at others another power.
const pump = (head, most, part = 0.75) => [[0, head], [most * litresPerMinute / 2, head * part], [most * litresPerMinute, 0]];

// Loops that grow evenly in length and shrink again, so that no two neighbours are alike.
function loops(count, shortest, longest, closed = [], diameter_m = 0.0125, kv = 1.4) {
    return Array.from({ length: count }, (_, i) => {
        const part = count === 1 ? 0 : (i * 7 % count) / (count - 1);
        return {
            ...pipe(Math.round(10 * (shortest + part * (longest - shortest))) / 10, diameter_m, 12 + i % 5),
            kv, open: !closed.includes(i),
        };
    });
}

const networks = [
    {
        name: "four loops", ...water40, pump_curve: pump(5, 55), mains: pipe(14, 0.02, 15),
        manifolds: [{ loops: loops(4, 60, 100) }],
    },
    {
        name: "four loops, two shut", ...water35, pump_curve: pump(5, 55), mains: pipe(14, 0.02, 15),
        manifolds: [{ loops: loops(4, 60, 100, [1, 2]) }],
    },
    {
        name: "thirteen loops", ...water40, pump_curve: pump(6, 110, 0.8), mains: pipe(16, 0.026, 15),
        manifolds: [{ loops: loops(13, 55, 110, [5]) }],
    },
    {
        name: "sixty-four loops", ...water40, pump_curve: pump(8, 420), mains: pipe(30, 0.051, 20),
        manifolds: [{ loops: loops(64, 50, 120, [3, 17]) }],
    },
    {
        name: "two hundred and fifty-six loops", ...water35, pump_curve: pump(9, 1500), mains: pipe(40, 0.1, 25),
        manifolds: [{ loops: loops(256, 45, 125, [0, 100, 200]) }],
    },
    {
        name: "two manifolds, each behind its branch", ...water40, pump_curve: pump(7, 110), mains: pipe(8, 0.028, 10),
        manifolds: [
            { branch: pipe(6, 0.022, 6), loops: loops(8, 60, 105, [2]) },
            { branch: pipe(24, 0.019, 12), loops: loops(6, 70, 120) },
        ],
    },
    {
        name: "a spring bypass part open", ...water40, pump_curve: pump(5, 45), mains: pipe(12, 0.022, 18),
        manifolds: [{ loops: loops(6, 60, 100, [0, 2, 3, 5]) }],
        spring_bypass: { opening_pa: 25000, band_pa: 20000, kvs: 1.6 },
    },
    {
        name: "a fixed bypass", ...water40, pump_curve: pump(5, 55), mains: pipe(12, 0.022, 18),
        manifolds: [{ loops: loops(6, 60, 100, [1, 4]) }], fixed_bypass_kv: 0.6,
    },
    {
        name: "glycol", ...glycol30, pump_curve: pump(7, 80), mains: pipe(14, 0.026, 15),
        manifolds: [{ loops: loops(10, 60, 100, [9]) }],
    },
    {
        name: "laminar", ...glycol50, pump_curve: pump(3, 40), mains: pipe(14, 0.022, 15),
        manifolds: [{ loops: loops(8, 80, 120) }],
    },
    {
        name: "in the transition", ...water20, pump_curve: pump(1.6, 30), mains: pipe(14, 0.022, 15),
        manifolds: [{ loops: loops(9, 60, 120) }],
    },
];

const here = path.dirname(fileURLToPath(import.meta.url));
const file = JSON.stringify({ made_by: "networks.mjs", units: "m, m³/s, m²/s, Pa, m³/h at 1 bar (Kv)", networks }, null, 1);
writeFileSync(path.join(here, "networks.json"), file.replace(/\[\s+([^[\]{}]+?)\s+\]/g, (_, s) => `[${s.replace(/\s+/g, " ")}]`)
    .replace(/\{\s+("length_m"[^{}]+?)\s+\}/g, (_, s) => `{ ${s.replace(/\s+/g, " ")} }`) + "\n");
