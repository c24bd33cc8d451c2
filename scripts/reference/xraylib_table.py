"""Makes api/domain/slip/attenuation.generated.ts and tests/fixtures/slip/xraylib.json.

Run with Debian's interpreter after `apt-get install python3-xraylib`:
    /usr/bin/python3 scripts/reference/xraylib_table.py
Source of every number: xraylib 4 (Schoonjans et al. 2011, Spectrochim. Acta B 66:776-784, doi 10.1016/j.sab.2011.09.011).
Total mass attenuation coefficients (photoelectric and both kinds of scattering), cm2/g.
"""
import json
import pathlib

import xraylib as xrl

ROOT = pathlib.Path(__file__).resolve().parents[2]
ELEMENTS = (
    "H Li B C N O F Na Mg Al Si P S Cl K Ca Ti V Cr Mn Fe Co Ni Cu Zn Ga As Rb Sr Y Zr Nb "
    "Ag Cd Sn Sb Ba La Ce Pb Bi Th U"
).split()
SHELLS = {"K": ("KA_LINE", "K_SHELL"), "L": ("LA_LINE", "L3_SHELL"), "M": ("MA1_LINE", "M5_SHELL")}
# Energies at which a beam comes in: round figures, and the K-alpha of molybdenum and rhodium anodes.
INCOMING = [8, 10, 12, 14, 15, 16, 18, 20, 22, 25, 30, 35, 40, 45, 50]
ANODES = ["Mo", "Rh"]


def lines():
    found = []
    for symbol in ELEMENTS:
        z = xrl.SymbolToAtomicNumber(symbol)
        for shell, (line, edge) in SHELLS.items():
            try:
                energy = xrl.LineEnergy(z, getattr(xrl, line))
                threshold = xrl.EdgeEnergy(z, getattr(xrl, edge))
            except ValueError:
                continue
            if 0.9 <= energy <= 33:
                found.append((symbol, shell, round(energy, 4), round(threshold, 4)))
    return found


def main():
    rows = lines()
    anodes = [round(xrl.LineEnergy(xrl.SymbolToAtomicNumber(a), xrl.KA_LINE), 3) for a in ANODES]
    energies = sorted({r[2] for r in rows} | {float(e) for e in INCOMING} | set(anodes))
    out = [
        "// Made by scripts/reference/xraylib_table.py from xraylib 4 (doi 10.1016/j.sab.2011.09.011). Do not edit.",
        "/** Energies at which a beam may come in, keV: round figures and the Kα of molybdenum and rhodium anodes. */",
        f"export const INCOMING_ENERGIES: readonly number[] = {json.dumps(sorted([float(e) for e in INCOMING] + anodes))};",
        "/** Energies of the columns of `MASS_ATTENUATION`, keV. */",
        f"export const TABLE_ENERGIES: readonly number[] = {json.dumps(energies)};",
        "/** Element, shell (Kα, Lα or Mα), energy of the line and of the edge that it needs, keV. */",
        "export const XRAY_LINES: readonly (readonly [string, 'K' | 'L' | 'M', number, number])[] = [",
        *[f"  ['{s}', '{shell}', {e}, {edge}]," for s, shell, e, edge in rows],
        "];",
        "/** Total mass attenuation of each element at `TABLE_ENERGIES`, cm²/g. */",
        "export const MASS_ATTENUATION: Readonly<Record<string, readonly number[]>> = {",
    ]
    for symbol in ELEMENTS:
        z = xrl.SymbolToAtomicNumber(symbol)
        out.append(f"  {symbol}: {json.dumps([float(f'{xrl.CS_Total(z, e):.5g}') for e in energies])},")
    out.append("};")
    out.append("/** Atomic numbers of the elements in the table. */")
    numbers = {s: xrl.SymbolToAtomicNumber(s) for s in ELEMENTS}
    out.append("export const ATOMIC_NUMBERS: Readonly<Record<string, number>> = {")
    out.append("  " + ", ".join(f"{s}: {z}" for s, z in numbers.items()) + ",")
    out.append("};")
    (ROOT / "api/domain/slip/attenuation.generated.ts").write_text("\n".join(out) + "\n")
    fixture()


def fixture():
    """Compounds straight from xraylib, to check our own sums over elements."""
    checks = {}
    for oxide in ["PbO", "SiO2", "Al2O3", "Fe2O3", "MnO2", "CuO"]:
        checks[oxide] = {
            f"{s} {shell}": xrl.CS_Total_CP(oxide, e)
            for s, shell, e, _ in lines()
            if (s, shell) in {("Al", "K"), ("Si", "K"), ("K", "K"), ("Ca", "K"), ("Ti", "K"), ("Mn", "K"),
                              ("Fe", "K"), ("Cu", "K"), ("Pb", "L"), ("Sr", "K"), ("Pb", "M")}
        }
        checks[oxide]["20 keV"] = xrl.CS_Total_CP(oxide, 20.0)
    folder = ROOT / "tests/fixtures/slip"
    folder.mkdir(parents=True, exist_ok=True)
    body = {
        "source": "xraylib 4.0.0 (Debian python3-xraylib), CS_Total_CP(compound, energy), cm2/g; doi 10.1016/j.sab.2011.09.011",
        "code": "scripts/reference/xraylib_table.py",
        "massAttenuation": checks,
    }
    (folder / "xraylib.json").write_text(json.dumps(body, indent=1) + "\n")


main()
