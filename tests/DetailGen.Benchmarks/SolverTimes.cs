using System.Diagnostics;
using DetailGen.Details.Solving;
using DetailGen.Solver;

namespace DetailGen.Benchmarks;

/// <summary>Every shipped detail: building its model, solving it, all its ranges; median ms of warm runs.</summary>
internal static class SolverTimes
{
    internal static int Print(string[] arguments)
    {
        var bench = new Workbench();
        var folder = Path.GetDirectoryName(Workbench.Shipped("any"))!;
        Console.WriteLine("detail                      unknowns claims   build   solve    told  ranges");
        foreach (var path in Directory.GetFiles(folder, "tern-court-*.yaml").Order(StringComparer.Ordinal))
        {
            if (arguments.Length > 0 && !path.Contains(arguments[0], StringComparison.Ordinal))
            {
                continue;
            }

            var preset = bench.Read(path);
            DetailProblem Made() => new(new Situation(preset, bench.Catalogue), DetailSolver.RulesOf(preset, bench.Catalogue));
            var model = Made().Model;
            var build = Median(() => Made());
            var solve = Median(() => model.Solve());
            var told = Median(() => bench.Solve(preset));
            var ranges = model.Solve() is Answer.Best ? Median(() => DetailSolver.Ranges(preset, bench.Catalogue)!) : double.NaN;
            Console.WriteLine(FormattableString.Invariant(
                $"{Path.GetFileNameWithoutExtension(path),-27} {model.Variables.Count,8} {model.Hard.Count,6} {build,7:0.00} {solve,7:0.00} {told,7:0.00} {ranges,7:0.00}"));
        }

        return 0;
    }

    private static double Median(Func<object> work)
    {
        var times = new List<double>();
        for (var run = 0; run < 15; run++)
        {
            var watch = Stopwatch.StartNew();
            work();
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        return StageTimes.Median(times.Skip(5));
    }
}
