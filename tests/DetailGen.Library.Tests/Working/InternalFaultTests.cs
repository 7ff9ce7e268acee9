using DetailGen.Library.Reports;
using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>A fault of our own in one detail of several.</summary>
public class InternalFaultTests
{
    [Fact]
    public void A_fault_in_one_detail_leaves_the_answers_of_the_others()
    {
        string[] paths = [Of("parapet-05"), Of("abutment-01"), Of("parapet-02")];
        var report = PresetFiles.Each(new(paths, []), Office.Of(null).Value, preset =>
            preset.Detail.Contains("abutment", StringComparison.Ordinal) ? throw new InvalidOperationException("Nothing stands here.") : new DetailReport(preset.Detail, preset.File, Solved: true));
        Assert.Equal([0, 4, 0], report.Details.Select(detail => detail.Status));
        Assert.Equal(4, report.Status);
        Assert.Equal(paths, report.Details.Select(detail => detail.Preset));
        var error = Assert.Single(report.Details[1].Errors!);
        Assert.Equal(("internal-fault", paths[1], "Internal fault (InvalidOperationException): Nothing stands here."), (error.Code, error.File, error.Reason));
        Assert.Equal("tern-court-abutment-01", report.Details[1].Detail);
    }

    [Fact]
    public void A_fault_while_one_preset_is_read_leaves_the_answers_of_the_others()
    {
        var office = Office.Of(null).Value;
        string[] paths = [Of("parapet-05"), Of("abutment-01"), Of("parapet-02")];
        var given = PresetFiles.Open(paths, path => path == paths[1] ? throw new InvalidOperationException("Nothing stands here.") : PresetFiles.Read(path, [], office), []);
        Assert.Equal(paths, given.Select(one => one.Path));
        var answers = given.Select(one => one.Told(preset => new DetailReport(preset.Detail, preset.File, Solved: true))).ToList();
        Assert.Equal([0, 4, 0], answers.Select(answer => answer.Status));
        var error = Assert.Single(answers[1].Errors!);
        Assert.Equal(("internal-fault", paths[1], "Internal fault (InvalidOperationException): Nothing stands here."), (error.Code, error.File, error.Reason));
    }

    private static string Of(string name) => Repository.Path("presets", "details", $"tern-court-{name}.yaml");
}
