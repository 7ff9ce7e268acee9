using System.Diagnostics;
using System.Globalization;
using DetailGen.Details.Solving;
using DetailGen.Drawing.Annotation;

namespace DetailGen.Benchmarks;

/// <summary>Where the time of one drawing goes, first and warm. Processor time of the process, so that a busy machine disturbs little.</summary>
internal static class StageTimes
{
    private static readonly string[] Names = ["office", "read", "solve", "section", "tiling", "check", "view", "layout", "annotate", "dxf", "svg"];

    internal static int Print(string[] arguments)
    {
        var path = Workbench.Shipped(arguments.ElementAtOrDefault(0) ?? "tern-court-parapet-01");
        var runs = int.Parse(arguments.ElementAtOrDefault(1) ?? "15", CultureInfo.InvariantCulture);
        var watch = new Stages();
        var bench = watch.Time("office", () => new Workbench());
        for (var run = 0; run < runs; run++)
        {
            var preset = watch.Time("read", () => bench.Read(path));
            var solved = (Solution.Solved)watch.Time("solve", () => bench.Solve(preset));
            var section = watch.Time("section", () => Workbench.Build(solved));
            watch.Time("tiling", () => (object)Workbench.Tile(section));
            var worked = watch.Time("check", () => Workbench.Check(solved, section));
            watch.Time("view", () => Workbench.View(section));
            var sheet = watch.Time("layout", () => bench.Compose(worked));
            watch.Time("annotate", () => Annotator.Place(sheet.Asked)); // the main view alone, as it was drawn
            watch.Time("dxf", () => (object)Workbench.Emit(sheet.Scene, "dxf"));
            watch.Time("svg", () => (object)Workbench.Emit(sheet.Scene, "svg"));
        }

        Console.WriteLine(FormattableString.Invariant($"{Path.GetFileNameWithoutExtension(path)}: ms of the first run, median and least ms of the second half of {runs} runs; MB allocated by the last"));
        foreach (var name in Names)
        {
            var times = watch.Of(name);
            var (median, least) = times.Count > 1 ? (Median(times.Skip(times.Count / 2)), times.Skip(times.Count / 2).Min()) : (double.NaN, double.NaN);
            Console.WriteLine(FormattableString.Invariant($"  {name,-8} {times[0],9:0.0} {median,9:0.00} {least,9:0.00} {watch.Allocated(name),9:0.0}"));
        }

        return 0;
    }

    internal static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return sorted[sorted.Count / 2];
    }

    private sealed class Stages
    {
        private readonly Dictionary<string, List<double>> _times = new(StringComparer.Ordinal);

        private readonly Dictionary<string, double> _allocated = new(StringComparer.Ordinal);

        internal List<double> Of(string name) => _times[name];

        /// <summary>MB.</summary>
        internal double Allocated(string name) => _allocated[name];

        internal T Time<T>(string name, Func<T> work)
        {
            using var process = Process.GetCurrentProcess();
            var (before, allocated) = (process.UserProcessorTime, GC.GetTotalAllocatedBytes());
            var answer = work();
            _allocated[name] = (GC.GetTotalAllocatedBytes() - allocated) / 1e6;
            process.Refresh();
            if (!_times.TryGetValue(name, out var times))
            {
                _times[name] = times = [];
            }

            times.Add((process.UserProcessorTime - before).TotalMilliseconds);
            return answer;
        }
    }
}
