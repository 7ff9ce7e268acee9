using System.Diagnostics;
using System.Globalization;
using DetailGen.Dxf;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Reading;
using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Writing;

namespace DetailGen.Benchmarks;

/// <summary>Writing and reading a large drawing in the shares of a section drawing, twice as large each time: is the time in proportion, and the memory.</summary>
internal static class DxfThroughput
{
    private const string On = "A-BENCH-E-";
    private const int Runs = 5;
    private static readonly HatchPattern Lines = new("two-lines", [new(45, default, new(-1.5, 1.5), []), new(0, default, new(0, 3), [2, -1])]);

    internal static int Print(string[] arguments)
    {
        var most = arguments.Length > 0 ? int.Parse(arguments[0], CultureInfo.InvariantCulture) : 100_000;
        Console.WriteLine("entities      MB   write ms   read ms   read back and compared ms   memory while reading, of the file");
        for (var count = Math.Max(1, most / 8); count <= most; count *= 2)
        {
            var document = new DxfDocument { Layers = [new Layer(On)], Model = [.. Mixture(count)] };
            using var file = new MemoryStream();
            DxfWriter.Write(document, file);
            var bytes = file.ToArray();
            var write = Best(() =>
            {
                file.SetLength(0);
                DxfWriter.Write(document, file);
            });
            var before = GC.GetTotalMemory(forceFullCollection: true);
            var kept = DxfFile.Read(new MemoryStream(bytes));
            var memory = (GC.GetTotalMemory(forceFullCollection: true) - before) / (double)bytes.Length;
            GC.KeepAlive(kept);
            var read = Best(() => DxfFile.Read(new MemoryStream(bytes)));
            var drawing = Best(() => DxfDrawing.Read(new MemoryStream(bytes)));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count,8} {bytes.Length / 1e6,7:0.0} {write,10:0.0} {read,9:0.0} {drawing,27:0.0} {memory,12:0.0} times"));
        }

        return 0;
    }

    private static double Best(Action action)
    {
        action();
        return Enumerable.Range(0, Runs).Min(_ =>
        {
            var watch = Stopwatch.StartNew();
            action();
            return watch.Elapsed.TotalMilliseconds;
        });
    }

    // 40 % lines, 30 % polylines of 8 vertices, 10 % texts, 10 % arcs, 5 % circles, 3 % texts of two lines, 2 % fills of two families.
    private static IEnumerable<Entity> Mixture(int count)
    {
        for (var i = 0; i < count; i++)
        {
            var p = Points(i);
            yield return (i * 37 % 100) switch
            {
                < 40 => new Line(p[0].Point, p[1].Point) { Layer = On },
                < 70 => new Polyline([.. p]) { Layer = On },
                < 80 => new Text($"part {i}", p[0].Point, 2.5, 12) { Layer = On },
                < 90 => new Arc(p[0].Point, 4.5, i % 360, (i % 360) + 90) { Layer = On },
                < 95 => new Circle(p[0].Point, 4.5) { Layer = On },
                < 98 => new Mtext([$"note {i}", "second line"], p[0].Point, 2.5, 20) { Layer = On },
                _ => new Hatch([.. p], Lines) { Layer = On },
            };
        }
    }

    private static Vertex[] Points(int i)
    {
        var (x, y) = (i % 1000 * 12.5, i / 1000 * 9.75);
        return [.. Enumerable.Range(0, 8).Select(j => new Vertex(x + (5 * Math.Cos(j * 0.7)) + (0.1 * i / 7), y + (5 * Math.Sin(j * 0.7))))];
    }
}
