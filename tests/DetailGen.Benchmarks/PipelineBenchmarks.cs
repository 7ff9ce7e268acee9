using BenchmarkDotNet.Attributes;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Library.Working;

namespace DetailGen.Benchmarks;

/// <summary>Each stage of a drawing against writing the settled scene as DXF: the one thing that no drawing can do without.</summary>
[MemoryDiagnoser]
public class PipelineBenchmarks
{
    private Workbench _bench = null!;
    private string _path = "";
    private Preset _preset = null!;
    private Solution.Solved _solved = null!;
    private Worked _worked = null!;
    private Drawing.Sheets.ComposedSheet _sheet = null!;

    [Params("tern-court-parapet-01", "tern-court-abutment-01")]
    public string Detail { get; set; } = "";

    [GlobalSetup]
    public void Prepare()
    {
        _bench = new();
        _path = Workbench.Shipped(Detail);
        _preset = _bench.Read(_path);
        _solved = (Solution.Solved)_bench.Solve(_preset);
        _worked = Workbench.Check(_solved, Workbench.Build(_solved));
        _sheet = _bench.Compose(_worked);
    }

    [Benchmark(Baseline = true)]
    public int EmitDxf() => Workbench.Emit(_sheet.Scene, "dxf");

    [Benchmark]
    public int EmitSvg() => Workbench.Emit(_sheet.Scene, "svg");

    [Benchmark]
    public object Read() => _bench.Read(_path);

    [Benchmark]
    public object Solve() => _bench.Solve(_preset);

    [Benchmark]
    public object Section() => Workbench.Build(_solved);

    [Benchmark]
    public object Check() => Workbench.Check(_solved, _worked.Section);

    [Benchmark]
    public object View() => Workbench.View(_worked.Section);

    /// <summary>Choice of sheet and scale, every view and annotation tried for it, tables.</summary>
    [Benchmark]
    public object Layout() => _bench.Compose(_worked);

    [Benchmark]
    public int Whole() => _bench.Whole(_path);
}
