"""Writes tests/fixtures/intake/independent.xlsx with openpyxl 3.0.9 (Debian python3-openpyxl), a writer that is not ours.

All data are invented. Run: /usr/bin/python3 scripts/reference/intake-workbook.py
"""

import datetime
import pathlib

from openpyxl import Workbook

book = Workbook()
sheet = book.active
sheet.title = "Paint"
sheet["A1"] = "Invented analyses of painted tiles (wt%)"
sheet.append(["Sample", "Part", "Date", "SiO2", "PbO", "Fe2O3T", "Cu", "Share", "Total"])
sheet.append([None, None, None, "wt%", "wt%", "wt%", "ppm", None, None])
rows = [
    ["T-1 “ä”", "paint", datetime.date(2024, 5, 31), 36.7, 55.1 + 0.2, "<0.05", 1200, 0.5, "=D4+E4"],
    ["T-2", "paint", datetime.date(2024, 6, 1), 30, 60.25, 1.5, "n.d.", 0.25, "=D5+E5"],
    ["T-3 & <b>", "paint", datetime.datetime(2024, 6, 2, 12, 0), 33.123456, 58.5, 0.7, 900, 1, "=D6+E6"],
]
for row in rows:
    sheet.append(row)
for line in range(4, 7):
    for column in "DEF":
        sheet[f"{column}{line}"].number_format = "0.00"
    sheet[f"H{line}"].number_format = "0.0%"
sheet.merge_cells("A1:I1")

hidden = book.create_sheet("Hidden")
hidden.sheet_state = "hidden"
hidden["A1"] = "nothing here"

other = book.create_sheet("Body")
other.append(["Sample", "SiO2", "Al2O3"])
other.append(["R-1", 60.1, 18.2])

out = pathlib.Path(__file__).parents[2] / "tests/fixtures/intake/independent.xlsx"
book.save(out)
