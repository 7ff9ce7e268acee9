using System.Diagnostics;
using DetailGen.Solver;
using DetailGen.Solver.Tests;

namespace DetailGen.Benchmarks;

/// <summary>Models of real shape and growing size, their blocks apart or chained: processor time and allocation of building and solving, and the exponents of both.</summary>
internal static class SolverScaling
{
    private const int Seeds = 3;
    private const int PerBlock = 20;
    private static readonly int[] Sizes = [50, 100, 200, 500, 1000, 2000, 5000];

    internal static int Print(string[] arguments)
    {
        var most = arguments.Length > 0 ? int.Parse(arguments[0], System.Globalization.CultureInfo.InvariantCulture) : Sizes[^1];
        foreach (var chained in (bool[])[false, true])
        {
            Console.WriteLine($"{(chained ? "blocks chained" : "blocks apart")}, median of {Seeds}\n  unknowns        ms        MB  proven");
            var curve = new List<(double Size, double Time, double Memory)>();
            LayeredModel.Of(0, 5, 0, chained: chained).Solve(); // warm
            foreach (var size in Sizes.Where(size => size <= most))
            {
                var times = new List<double>();
                var bytes = new List<double>();
                var (count, proven) = (0, 0);
                for (var seed = 0; seed < Seeds; seed++)
                {
                    var before = GC.GetAllocatedBytesForCurrentThread();
                    var start = Process.GetCurrentProcess().TotalProcessorTime;
                    var model = LayeredModel.Of(seed, size / PerBlock, 0, chained: chained);
                    proven += model.Solve() is Answer.NotProven ? 0 : 1;
                    times.Add((Process.GetCurrentProcess().TotalProcessorTime - start).TotalMilliseconds);
                    bytes.Add((GC.GetAllocatedBytesForCurrentThread() - before) / 1e6);
                    count = model.Variables.Count;
                }

                var (time, memory) = (StageTimes.Median(times), StageTimes.Median(bytes));
                Console.WriteLine(FormattableString.Invariant($"{count,10} {time,9:0.0} {memory,9:0.00} {proven}/{Seeds}"));
                if (proven == Seeds)
                {
                    curve.Add((count, time, memory));
                }
            }

            Console.WriteLine(FormattableString.Invariant(
                $"  of those proven, time grows with the {Exponent(curve.ConvertAll(one => (one.Size, one.Time))):0.00}th power, allocation with the {Exponent(curve.ConvertAll(one => (one.Size, one.Memory))):0.00}th"));
        }

        return 0;
    }

    /// <summary>Slope of the line through the logarithms, least squares.</summary>
    private static double Exponent(List<(double X, double Y)> points)
    {
        var x = points.Average(point => Math.Log(point.X));
        var y = points.Average(point => Math.Log(point.Y));
        return points.Sum(point => (Math.Log(point.X) - x) * (Math.Log(point.Y) - y)) / points.Sum(point => Math.Pow(Math.Log(point.X) - x, 2));
    }
}
