using DetailGen.Details.Solving;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Junctions;

public class AnySizesTests
{
    [Fact]
    public void Whatever_the_solver_allows_is_built_and_tiles()
    {
        var cases = Soak.Cases(200);
        var solved = 0;
        AnyDetail.Presets.Always(
            preset =>
            {
                if (Shipped.Solve(preset) is Solution.Solved sizes)
                {
                    Interlocked.Increment(ref solved);
                    try
                    {
                        Laws.Hold(SectionBuilder.Build(sizes));
                    }
                    catch (Exception fault)
                    {
                        if (Environment.GetEnvironmentVariable("SECTION_PICTURES") is { } folder)
                        {
                            Picture.Write(SectionBuilder.Build(sizes), Path.Combine(folder, "failed.json"));
                        }

                        throw new InvalidOperationException(fault.Message + "\n" + string.Join("; ", sizes.Values.Select(value => $"{value.Key} {value.Text}")), fault);
                    }
                }
            },
            cases: cases, print: AnyDetail.Told);
        Assert.True(solved > cases / 2, $"Only {solved} of {cases} could be solved.");
    }
}
