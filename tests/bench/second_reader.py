"""The layouts of the drawing files as a reader sees them that has nothing to do with the writer.

GDAL, which the tests read with, passes over viewports. This is run by hand: it wants node and the package
dxf-json (MIT) in a folder of its own, as ``npm install --prefix FOLDER dxf-json`` puts it there.
"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from app.demo import list_demos, read_demo
from app.outputs import DRAWING, build_outputs, build_packet_sheets

NEAR = 1e-6
READER = """
const fs = require('fs');
const { DxfParser } = require(process.argv[1] + '/node_modules/dxf-json');
const read = new DxfParser().parseSync(fs.readFileSync(process.argv[2], 'utf8'));
const all = [...read.entities];
for (const block of Object.values(read.blocks)) all.push(...(block.entities || []));
const views = all.filter(e => e.type === 'VIEWPORT' && e.viewportId > 1)
  .map(e => [e.ownerBlockRecordSoftId, e.viewHeight / e.height]);
const layouts = read.objects.byName.LAYOUT.map(l => [l.layoutName, l.paperSpaceTableId || l.ownerObjectId]);
console.log(JSON.stringify({ views, layouts }));
"""


def main(folder: str) -> int:
    """Print for each shipped job how many viewports were read, and which are not at their sheet's scales."""
    wrong = 0
    for name in list_demos():
        job = read_demo(name)
        sheets = build_packet_sheets(job, "tabloid", "")
        (output,) = build_outputs(job, "tabloid", "", (DRAWING,))
        found = _read(folder, output.data)
        titles = {block: title for title, block in found["layouts"]}
        off = []
        for block, ratio in found["views"]:
            sheet = sheets[int(titles[block].split()[0]) - 1]
            scales = {placed.drawing.ratio for placed in sheet.placed}
            if not any(abs(ratio - scale) < NEAR * scale for scale in scales):
                off.append((titles[block], ratio))
        print(
            f"{name}: {len(found['layouts']) - 1} layouts, {len(found['views'])} viewports, off scale: {off}"
        )
        wrong += len(off) + (not found["views"])
    return 1 if wrong else 0


def _read(folder: str, data: bytes) -> dict[str, list[list[object]]]:
    with TemporaryDirectory() as place:
        path = Path(place) / "views.dxf"
        path.write_bytes(data)
        done = subprocess.run(
            ["node", "-e", READER, str(Path(folder).resolve()), str(path)],
            capture_output=True,
            text=True,
            check=True,
        )
    return json.loads(done.stdout)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
