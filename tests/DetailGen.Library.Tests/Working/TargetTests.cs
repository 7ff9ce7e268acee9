using System.Globalization;
using DetailGen.Details.Solving;
using DetailGen.Library.Tests.Laws;
using DetailGen.Library.Working;

namespace DetailGen.Library.Tests.Working;

/// <summary>Which sizes are tried for a target on the heat through the junction.</summary>
public class TargetTests
{
    [Theory]
    [InlineData(true, 0.5, 0.4, 0.35, 0.33, 0.32)] // thicker is better, and the thickest is not good enough
    [InlineData(true, 0.32, 0.32, 0.33, 0.35, 0.4)] // thicker is worse
    [InlineData(false, 0.5, 0.4, 0.33, 0.35, 0.4)] // between may lie what no end shows
    [InlineData(false, 0.5, 0.4, 0.35, 0.33, 0.29)]
    [InlineData(false, 0.5, 0.4, 0.35, 0.33)] // one of them cannot be built
    public void Sizes_between_are_left_out_only_where_the_figure_rises_or_falls_all_along_and_misses_at_both_ends(bool hopeless, params double[] figures) =>
        Assert.Equal(hopeless, Targets.IsHopeless([new("junction.psi", 0.3m, default)], [.. figures.Select(figure => new Simulated(0.9m, (decimal)figure))]));

    [Theory]
    [InlineData(2, 0.5, 0.4, 0.35, 0.29, 0.28)]
    [InlineData(0, 0.5, 0.29, 0.28, 0.27, 0.26)] // the first of those spread is good enough: the least may be thinner
    [InlineData(4, 0.5, 0.4, 0.35, 0.33, 0.32)]
    [InlineData(0, 0.5, 0.4, 0.45, 0.29, 0.28)] // what is thinner may be better
    [InlineData(0, 0.29, 0.31, 0.33, 0.35, 0.4)] // and is
    [InlineData(0, 0.5, 0.4, 0.35, 0.29)] // one of them cannot be built
    public void Sizes_are_too_thin_only_where_the_figure_gets_better_all_along(int thin, params double[] figures) =>
        Assert.Equal(thin, Targets.TooThin([new("junction.psi", 0.3m, default)], [.. figures.Select(figure => new Simulated(0.9m, (decimal)figure))]));

    // By the wider bounds of a first look thicker insulation was taken than is needed, or none was thick enough.
    [Theory]
    [InlineData("0.1318")]
    [InlineData("0.1310")]
    public void The_least_size_that_meets_a_target_is_taken(string target)
    {
        const string key = "upstand.insulation";
        var taken = Worked($"target.junction.psi={target} W/mK").Solved.Find(key)!.Value.Number / 1000;
        Assert.True(Psi(taken) <= decimal.Parse(target, CultureInfo.InvariantCulture));
        Assert.True(Psi(taken - 5) > decimal.Parse(target, CultureInfo.InvariantCulture));

        static decimal Psi(decimal thick) => (decimal)Worked(string.Create(CultureInfo.InvariantCulture, $"{key}={thick} mm")).Heat!.PsiInternal.Upper;
    }

    [Fact]
    public void The_reason_names_each_figure_that_was_asked_for()
    {
        var why = Worked("target.junction.psi=0.1318 W/mK", "target.junction.frsi=0.75").Solved.Find("upstand.insulation")!.Why;
        Assert.Equal(WhyKind.Target, why.Kind);
        Assert.Contains("Ψ with inside dimensions at most 0.1318 W/mK", why.Text, StringComparison.Ordinal);
        Assert.Contains("temperature factor at least 0.75", why.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_many_sizes_the_thickest_and_three_between_are_looked_at_first()
    {
        Assert.Equal([5, 10, 15, 20], Targets.Spread([.. Enumerable.Range(1, 20)]));
        Assert.Equal([2, 4, 6, 9], Targets.Spread([.. Enumerable.Range(1, 9)]));
        Assert.Empty(Targets.Spread([.. Enumerable.Range(1, 8)]));
    }

    private static Worked Worked(params string[] set)
    {
        var office = Office.Of(null).Value;
        Worked? worked = null;
        Scratch.Folder(folder =>
        {
            var path = Path.Combine(folder, "target.yaml");
            File.WriteAllText(path, "detail: target\njunction: parapet\nwall: cavity-masonry\nroof: warm-timber-deck\n");
            worked = DetailWork.Do(PresetFiles.Read(path, set, office).Value, office, Simulation.Always).Worked;
        });
        return worked!;
    }
}
