using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using DetailGen.Physics.Cases;
using DetailGen.Physics.Fields;

namespace DetailGen.Benchmarks;

/// <summary>
/// Two-dimensional heat flow of a check case: time to a gap of the bounds, and its ratio to one bare solution of as many unknowns in the same run; then gap and time over unknowns,
/// with their exponents. A case is answered whole: read, meshed, refined, both bounds, temperature factors, and the second film where it has one.
/// </summary>
internal static class FieldTimes
{
    private static readonly double[] Goals = [0.01, 0.001, 0.0001];
    private static readonly double[] Curve = [0.05, 0.02, 0.01, 0.005, 0.002, 0.001, 0.0005, 0.0002, 0.0001];

    private const int Batch = 10;
    internal static readonly TimeSpan Warming = TimeSpan.FromSeconds(5);

    internal static int Print(string[] arguments)
    {
        var id = arguments.Length > 0 ? arguments[0] : "junction-i";
        var runs = arguments.Length > 1 ? int.Parse(arguments[1], CultureInfo.InvariantCulture) : 5;
        if (Cases().FirstOrDefault(one => one["id"]!.GetValue<string>() == id) is not { } asked)
        {
            Console.Error.WriteLine($"There is no case {id} of two-dimensional heat flow in the check cases.");
            return 2;
        }

        Console.WriteLine($"{id}: medians over {runs} runs in batches of {Batch}, processor time, after as many as run in 5 s");
        Console.WriteLine("wanted gap   reached   unknowns        ms   one bare solution ms   ratio");
        foreach (var goal in Goals)
        {
            var written = Written(asked, goal);
            var (gap, unknowns) = Answer(written);
            for (var clock = Stopwatch.StartNew(); clock.Elapsed < Warming;)
            {
                Answer(written); // until then the runtime compiles anew what is called often
            }

            var time = Median(runs, () => Answer(written));
            var bare = Solution(unknowns, runs);
            Console.WriteLine(FormattableString.Invariant($"{goal,10:0.00%} {gap,9:0.000%} {unknowns,10} {time,9:0.0} {bare,23:0.0} {time / bare,7:0.0}"));
        }

        Console.WriteLine();
        Console.WriteLine("unknowns        gap        ms");
        var points = new List<(double Unknowns, double Gap, double Time)>();
        foreach (var wanted in Curve)
        {
            var written = Written(asked, wanted);
            var (gap, unknowns) = Answer(written);
            if (points.Count > 0 && unknowns <= points[^1].Unknowns)
            {
                continue;
            }

            points.Add((unknowns, gap, Median(runs, () => Answer(written))));
            Console.WriteLine(FormattableString.Invariant($"{unknowns,8} {gap,10:0.0000%} {points[^1].Time,9:0.0}"));
        }

        if (points.Count > 1)
        {
            Console.WriteLine(FormattableString.Invariant(
                $"gap falls as unknowns to the power {Exponent(points.Select(point => (point.Unknowns, point.Gap))):0.00}, time grows as unknowns to the power {Exponent(points.Select(point => (point.Unknowns, point.Time))):0.00}"));
        }

        return 0;
    }

    internal static IEnumerable<JsonNode> Cases()
    {
        var root = Path.GetDirectoryName(Path.GetDirectoryName(Path.GetDirectoryName(Workbench.Shipped("any"))!))!;
        var text = File.ReadAllText(Path.Combine(root, "tests", "DetailGen.Physics.Tests", "Cases", "physics-checks.json"));
        return JsonNode.Parse(text)!["cases"]!.AsArray().Where(one => one!["kind"]!.GetValue<string>() == "heat2d").Select(one => one!);
    }

    internal static byte[] Written(JsonNode asked, double wanted)
    {
        var copy = asked.DeepClone().AsObject();
        copy["wanted_error"] = wanted;
        copy.Remove("expected");
        return Encoding.UTF8.GetBytes(copy.ToJsonString());
    }

    // gap of the bounds over the lower one, and the unknowns of the largest system
    internal static (double Gap, int Unknowns) Answer(byte[] asked)
    {
        var answer = CaseFile.Answer(asked, "case.json", CaseMatter.Heat, []);
        var result = JsonNode.Parse(answer.Json ?? throw new InvalidOperationException(answer.Faults[0].Reason))!["result"]!;
        var bounds = result["l2d_bounds_w_mk"]?.AsArray() ?? throw new InvalidOperationException("The case has no bounds.");
        var (lower, upper) = (bounds[0]!.GetValue<double>(), bounds[1]!.GetValue<double>());
        return ((upper - lower) / lower, result["unknowns"]!.GetValue<int>());
    }

    /// <summary>Solving once for the temperature on a square of about as many unknowns: coefficients, ordering, factor and both substitutions, without any refinement or bounds.</summary>
    private static double Solution(int unknowns, int runs)
    {
        var (mesh, conditions) = Square(unknowns);
        return Median(runs, () => new TemperatureField(mesh, conditions, new Dissection(mesh)));
    }

    /// <summary>Bare solutions of both fields up to a million unknowns, once each.</summary>
    internal static int PrintLarge()
    {
        Console.WriteLine("unknowns         ms   us each   MB allocated");
        var points = new List<(double Unknowns, double Time)>();
        foreach (var wanted in new[] { 3_000, 10_000, 30_000, 100_000, 300_000, 1_000_000 })
        {
            var (mesh, conditions) = Square(wanted);
            GC.Collect();
            var (before, allocated) = (Process.GetCurrentProcess().TotalProcessorTime, GC.GetTotalAllocatedBytes());
            var field = new MeshField(mesh, conditions);
            var time = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds;
            points.Add((field.Unknowns, time));
            Console.WriteLine(FormattableString.Invariant(
                $"{field.Unknowns,8} {time,10:0} {1000 * time / field.Unknowns,9:0.0} {(GC.GetTotalAllocatedBytes() - allocated) / 1e6,14:0}"));
        }

        Console.WriteLine(FormattableString.Invariant($"time grows as unknowns to the power {Exponent(points):0.00}"));
        return 0;
    }

    // refined evenly
    private static (Mesh Mesh, Conditions Conditions) Square(int unknowns)
    {
        FieldEnvironment warm = new("warm", 1, FieldSide.Internal), cold = new("cold", 0, FieldSide.External);
        FieldPlace a = new(0, 0), b = new(1000, 0), c = new(1000, 1000), d = new(0, 1000);
        var square = new FieldCase(
            "square", [new("m", 1, [a, b, c, d], [])], [new(warm, 0.1, [a, b]), new(cold, 0.1, [c, d]), new(null, 0, [b, c]), new(null, 0, [d, a])], [], [], null, 0.1);
        var mesh = Arrangement.Build(square).Mesh!;
        while (mesh.Places.Length + mesh.Sides.Length < unknowns)
        {
            var left = (unknowns - mesh.Places.Length - mesh.Sides.Length) / 4; // a triangle halved brings about four unknowns: its neighbour is halved with it
            mesh = mesh.Refine([.. mesh.Triangles.Select((_, t) => t <= left)]).Mesh;
        }

        return (mesh, Conditions.Of(square, 0, 1, null));
    }

    // in batches: to ask for the process's time costs some of it
    internal static double Median<T>(int runs, Func<T> work)
    {
        work();
        var times = new List<double>();
        for (var batch = 0; batch < Math.Max(1, runs / Batch); batch++)
        {
            var before = Process.GetCurrentProcess().TotalProcessorTime;
            for (var run = 0; run < Batch; run++)
            {
                work();
            }

            times.Add((Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds / Batch);
        }

        return StageTimes.Median(times);
    }

    /// <summary>Slope of the straight line through the logarithms.</summary>
    private static double Exponent(IEnumerable<(double X, double Y)> points)
    {
        var logs = points.Select(point => (X: Math.Log(point.X), Y: Math.Log(point.Y))).ToArray();
        double x = logs.Average(point => point.X), y = logs.Average(point => point.Y);
        return logs.Sum(point => (point.X - x) * (point.Y - y)) / logs.Sum(point => (point.X - x) * (point.X - x));
    }
}
