using System.Diagnostics;
using System.Globalization;

namespace DetailGen.Benchmarks;

/// <summary>Many variants of one preset in one process. Halves are compared: time in proportion to the number, the peak of memory no higher.</summary>
internal static class Variants
{
    internal static int Print(string[] arguments)
    {
        var path = Workbench.Shipped(arguments.ElementAtOrDefault(0) ?? "tern-court-parapet-01");
        var count = int.Parse(arguments.ElementAtOrDefault(1) ?? "1000", CultureInfo.InvariantCulture);
        var bench = new Workbench();
        // code is compiled and the heap has grown to its size before anything is compared
        Half(bench, path, 20);
        var first = Half(bench, path, count / 2);
        var second = Half(bench, path, count - (count / 2));
        Console.WriteLine(FormattableString.Invariant($"{count} variants of {Path.GetFileNameWithoutExtension(path)}, halves: processor time s, peak of the managed heap in MB, peak of the working set in MB"));
        Console.WriteLine(FormattableString.Invariant($"  first  {first.Seconds,8:0.00} {first.Heap,8:0.0} {first.Working,8:0.0}"));
        Console.WriteLine(FormattableString.Invariant($"  second {second.Seconds,8:0.00} {second.Heap,8:0.0} {second.Working,8:0.0}"));
        Console.WriteLine(FormattableString.Invariant($"  ratio  {second.Seconds / first.Seconds,8:0.000} {second.Heap / first.Heap,8:0.000} {second.Working / first.Working,8:0.000}"));
        return 0;
    }

    private static HalfFigures Half(Workbench bench, string path, int count)
    {
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var (heap, working) = (0.0, 0.0);
        for (var i = 0; i < count; i++)
        {
            // both halves draw the same ones
            bench.Whole(path, FormattableString.Invariant($"coping.overhang={50 + (5 * (i % 6))}mm"));
            process.Refresh();
            heap = Math.Max(heap, GC.GetTotalMemory(false) / 1e6);
            working = Math.Max(working, process.WorkingSet64 / 1e6);
        }

        process.Refresh();
        return new((process.TotalProcessorTime - before).TotalSeconds, heap, working);
    }

    private sealed record HalfFigures(double Seconds, double Heap, double Working);
}
