using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Library.Working;

namespace DetailGen.Library.Tests.Wording;

public class MaterialNamesTests
{
    // "EPS board, EPS board, graphite, XPS board" would be read as four materials, one of them twice.
    [Theory]
    [InlineData("membrane-compatibility-pvc", "EPS board; EPS board, graphite; XPS board")]
    [InlineData("vcl-resistance", "polyethylene VCL, low density film; aluminium foil VCL")]
    public void Names_with_commas_of_their_own_are_listed_with_semicolons(string rule, string told)
    {
        var office = Office.Of(null).Value;
        var read = PresetReader.ReadText(
            "detail: names\njunction: parapet\nwall: cavity-masonry\nroof: warm-concrete-deck\nmaterials: { roof.membrane: pvc-membrane }\n", "names.yaml", [], office.Context)
            .SelectMany(preset => DetailSolver.Check(preset, office.Catalogue));
        var verdict = DetailWork.Do(read.Value, office).Worked!.Solved.Verdicts.Single(verdict => verdict.Rule.Id == rule);
        Assert.Contains(told, verdict.Right!.Text, StringComparison.Ordinal);
    }
}
