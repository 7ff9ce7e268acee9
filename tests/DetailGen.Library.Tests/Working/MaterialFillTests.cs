using DetailGen.Details.Parameters;
using DetailGen.Drawing.Fills;

namespace DetailGen.Library.Tests.Working;

public class MaterialFillTests
{
    // Sheets are drawn as bands or lines, sealant and air have no pattern: their words name a line sign, not a fill.
    private static readonly string[] Signs = ["membrane", "damp-proof-course", "vapour-control", "separating-sheet", "metal-flashing", "sealant", "air", ""];

    [Fact]
    public void Every_shipped_material_has_a_fill_that_the_drawing_knows() =>
        Assert.Empty(MaterialLibrary.Load().All.Select(material => material.Material).Where(material => !Signs.Contains(material.Fill) && !FillTable.Knows(material.Fill))
            .Select(material => $"{material.Id}: {material.Fill}"));
}
