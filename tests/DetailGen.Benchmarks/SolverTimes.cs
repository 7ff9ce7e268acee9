using System.Diagnostics;
using DetailGen.Details.Solving;
using DetailGen.Solver;
using DetailGen.Solver.Search;
using DetailGen.Solver.Tests;

namespace DetailGen.Benchmarks;

/// <summary>
/// Every shipped detail: building its model, solving it (in steps too, the same on every machine), all its ranges, moving a given size from place to place as under a slider; median ms of warm runs.
/// Against CP-SAT (one worker, met level by level) in processor time of building and solving the same model; ours settles ties too.
/// </summary>
internal static class SolverTimes
{
    private const int Places = 25;

    internal static int Print(string[] arguments)
    {
        var bench = new Workbench();
        var folder = Path.GetDirectoryName(Workbench.Shipped("any"))!;
        Console.WriteLine("detail                      unknowns claims    steps   build   solve      kB    told  ranges    move  dearest     CP-SAT   ratio");
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
            var optimizer = Solving.Compiled(model, model.Variables);
            optimizer.Run(Solving.Targets(model), model.Budget);
            var before = GC.GetAllocatedBytesForCurrentThread();
            model.Solve();
            var allocated = (GC.GetAllocatedBytesForCurrentThread() - before) / 1000;
            var told = Median(() => bench.Solve(preset));
            var ranges = model.Solve() is Answer.Best ? Median(() => DetailSolver.Ranges(preset, bench.Catalogue)!) : double.NaN;
            var (move, dearest) = Moves(model);
            var own = Processor(() => model.Solve(), 20);
            var other = Processor(() => CpSatOracle.Costs(model) ?? [], 1);
            Console.WriteLine(FormattableString.Invariant(
                $"{Path.GetFileNameWithoutExtension(path),-27} {model.Variables.Count,8} {model.Hard.Count,6} {optimizer.Steps,8} {build,7:0.00} {solve,7:0.00} {allocated,7} {told,7:0.00} {ranges,7:0.00} {move,7:0.00} {dearest,8:0.00} {other,10:0.00} {other / own,7:0}"));
        }

        return 0;
    }

    /// <summary>ms of a move to a neighbouring value that can be, over all lengths that are given: median, and the dearest of their medians of five.</summary>
    private static (double Median, double Dearest) Moves(Model model)
    {
        var times = new List<double>();
        foreach (var given in model.Givens)
        {
            var domain = given.Variable.Domain;
            var first = Math.Clamp(domain.NearestPlace(given.Value) - Places / 2, 0, Math.Max(0, domain.Count - Places));
            var runs = new SortedDictionary<long, List<double>>();
            var session = model.Start();
            for (var run = 0; run < 6; run++)
            {
                for (var place = first; place < Math.Min(first + Places, domain.Count); place++)
                {
                    var watch = Stopwatch.StartNew();
                    var answer = session.Move(given.Tag, domain.At(place));
                    if (run > 0 && answer is Answer.Best)
                    {
                        runs.TryAdd(place, []);
                        runs[place].Add(watch.Elapsed.TotalMilliseconds);
                    }
                }
            }

            times.AddRange(runs.Values.Select(StageTimes.Median));
        }

        return times.Count == 0 ? (double.NaN, double.NaN) : (StageTimes.Median(times), times.Max());
    }

    private static double Processor(Func<object> work, int runs)
    {
        var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        for (var run = 0; run < runs; run++)
        {
            work();
        }

        process.Refresh();
        return (process.TotalProcessorTime - before).TotalMilliseconds / runs;
    }

    /// <summary>Warm: the runtime compiles anew, in the background, what has been called often for a while.</summary>
    private static double Median(Func<object> work)
    {
        const int Cold = 400, Runs = 15;
        for (var watch = Stopwatch.StartNew(); watch.ElapsedMilliseconds < Cold;)
        {
            work();
        }

        var times = new List<double>();
        for (var run = 0; run < Runs; run++)
        {
            var watch = Stopwatch.StartNew();
            work();
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        return StageTimes.Median(times);
    }
}
