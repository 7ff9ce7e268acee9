using DetailGen.Analysis.Fit;
using DetailGen.Analysis.Heat;
using DetailGen.Details;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Drawing.Emitters;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Drawing.Views;
using DetailGen.Library.Working;
using DetailGen.Library.Wording;
using DetailGen.Sections;

namespace DetailGen.Benchmarks;

/// <summary>The stages from preset to DXF, each to be called alone.</summary>
internal sealed class Workbench
{
    private readonly Office _office = Office.Of(null).Value;
    private readonly IReadOnlyList<SheetFormat> _formats;
    private readonly LayerMap _layers;

    internal Workbench()
    {
        _formats = SheetSetup.Formats(_office.Sheets, _office.Typeface, reducedPrint: false);
        _layers = SheetSetup.Layers(_office.Sheets);
    }

    /// <summary>A preset of the repository, wherever the process was started.</summary>
    internal static string Shipped(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "DetailGen.sln")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder?.FullName ?? ".", "presets", "details", name + ".yaml");
    }

    internal Preset Read(string path, params IReadOnlyList<string> overrides) => PresetFiles.Read(path, overrides, _office).Value;

    internal Catalogue Catalogue => _office.Catalogue;

    internal Solution Solve(Preset preset) => DetailSolver.Solve(preset, _office.Catalogue);

    internal static Section Build(Solution.Solved solved) => SectionBuilder.Build(solved);

    internal static Worked Check(Solution.Solved solved, Section section) =>
        new(solved, section, [.. section.Buildups.Select(BuildupResistance.Of)], Analysis.Quantities.PartQuantity.Of(section), SectionChecks.Of(section));

    internal static int Tile(Section section) => Tiling.Check(section).Count;

    /// <summary>The junction at 1:5 in a window of the size that a sheet would give it.</summary>
    internal static DrawnView View(Section section) => SectionView.Draw(section, new(5, new(-250, -800, 1000, 700), false));

    internal ComposedSheet Compose(Worked worked)
    {
        var preset = worked.Preset;
        return SheetComposer.Compose(
            worked.Section, SheetWords.Of(worked, moisture: null), SheetSetup.Asked(preset, viewOnly: false), _formats, _layers,
            new(preset.Detail, "", preset.Title, "", "", null, ""));
    }

    internal static int Emit(Scene scene, string format) => SceneFiles.Emit(scene, [format])[0].Bytes.Length;

    /// <summary>From a preset file to the bytes of its DXF.</summary>
    /// <returns>How many.</returns>
    internal int Whole(string path, params IReadOnlyList<string> overrides)
    {
        var solved = (Solution.Solved)Solve(Read(path, overrides));
        return Emit(Compose(Check(solved, Build(solved))).Scene, "dxf");
    }
}
