using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;

namespace DetailGen.Benchmarks;

/// <summary>Many variants of junction-i of the check cases in one process, each answered whole with a gap of 0.1 %, with the insulation a little better every time. Halves are compared: time in
/// proportion to the number, the peak of memory no higher. Then what the second film costs.</summary>
internal static class FieldVariants
{
    private const int Kinds = 100; // both halves answer the same ones
    private const double Gap = 0.001;

    internal static int Print(string[] arguments)
    {
        var count = int.Parse(arguments.ElementAtOrDefault(0) ?? "1000", CultureInfo.InvariantCulture);
        var asked = FieldTimes.Cases().Single(one => one["id"]!.GetValue<string>() == "junction-i");
        byte[][] variants = [.. Enumerable.Range(0, Kinds).Select(i => FieldTimes.Written(Better(asked, 1 - (0.004 * i)), Gap))];
        for (var clock = Stopwatch.StartNew(); clock.Elapsed < FieldTimes.Warming;)
        {
            FieldTimes.Answer(variants[0]);
        }

        var first = Half(variants, count / 2);
        var second = Half(variants, count - (count / 2));
        Console.WriteLine(FormattableString.Invariant($"{count} variants of junction-i, halves: processor time s, peak of the managed heap in MB, peak of the working set in MB"));
        Console.WriteLine(FormattableString.Invariant($"  first  {first.Seconds,8:0.00} {first.Heap,8:0.0} {first.Working,8:0.0}"));
        Console.WriteLine(FormattableString.Invariant($"  second {second.Seconds,8:0.00} {second.Heap,8:0.0} {second.Working,8:0.0}"));
        Console.WriteLine(FormattableString.Invariant($"  ratio  {second.Seconds / first.Seconds,8:0.000} {second.Heap / first.Heap,8:0.000} {second.Working / first.Working,8:0.000}"));

        var one = asked.DeepClone().AsObject();
        one.Remove("humidity_rsi_m2k_w");
        var alone = FieldTimes.Median(100, () => FieldTimes.Answer(FieldTimes.Written(one, Gap)));
        var both = FieldTimes.Median(100, () => FieldTimes.Answer(variants[0]));
        Console.WriteLine(FormattableString.Invariant($"without the second film {alone:0.0} ms, with it {both:0.0} ms: it takes {(both - alone) / alone:0.00} of the first"));
        return 0;
    }

    private static JsonNode Better(JsonNode asked, double factor)
    {
        var copy = asked.DeepClone();
        foreach (var (_, material) in copy["materials"]!.AsObject())
        {
            var conductivity = material!["lambda_w_mk"]!.GetValue<double>();
            material["lambda_w_mk"] = conductivity < 0.05 ? conductivity * factor : conductivity;
        }

        return copy;
    }

    private static (double Seconds, double Heap, double Working) Half(byte[][] variants, int count)
    {
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var (heap, working) = (0.0, 0.0);
        for (var i = 0; i < count; i++)
        {
            FieldTimes.Answer(variants[i % variants.Length]);
            process.Refresh();
            heap = Math.Max(heap, GC.GetTotalMemory(false) / 1e6);
            working = Math.Max(working, process.WorkingSet64 / 1e6);
        }

        process.Refresh();
        return ((process.TotalProcessorTime - before).TotalSeconds, heap, working);
    }
}
