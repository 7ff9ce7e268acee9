using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>
/// The solver sums resistances in whole numbers on the safe side, the schedule in floating point from the section as built; neither project sees the other,
/// so each has its own table of air layers. What one promises the other must report.
/// </summary>
public class TransmittanceAgreementTests
{
    public static TheoryData<string> Details =>
        [.. Directory.EnumerateFiles(Repository.Path("presets", "details"), "tern-court-*-0*.yaml").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Details))]
    public void The_schedule_reports_the_transmittance_that_the_solver_promised(string name)
    {
        var office = Office.Of(null).Value;
        var (worked, _) = DetailWork.Do(PresetFiles.Read(Repository.Path("presets", "details", name), [], office).Value, office);
        Assert.NotEmpty(worked!.Solved.Heat);
        foreach (var promised in worked.Solved.Heat)
        {
            // The safe side is worth less than a thousandth of the value.
            var reported = worked.Buildups.Single(stack => stack.Buildup.Id == promised.Element).UValue;
            Assert.Equal((double)promised.Transmittance, reported, reported * 0.001);
        }
    }

    [Theory]
    [InlineData("parapet-01", "along")]
    [InlineData("parapet-01", "across")]
    [InlineData("parapet-04", null)]
    [InlineData("abutment-02", null)]
    public void A_tight_target_holds_in_the_value_that_is_reported(string name, string? joists)
    {
        var office = Office.Of(null).Value;
        string[] set = joists is null ? ["target.roof.u-value=0.11"] : ["target.roof.u-value=0.11", $"roof.joists={joists}"];
        var (worked, _) = DetailWork.Do(PresetFiles.Read(Repository.Path("presets", "details", $"tern-court-{name}.yaml"), set, office).Value, office);
        Assert.InRange(worked!.Buildups.Single(stack => stack.Buildup.Id == "roof").UValue, 0, 0.11);
    }
}
