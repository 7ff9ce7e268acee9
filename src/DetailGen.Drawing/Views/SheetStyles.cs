using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>The sign by which a sheet material is told from others.</summary>
public enum SheetSign
{
    /// <summary>Solid black.</summary>
    Band,

    /// <summary>Black blocks with windows whose edges run on.</summary>
    Blocks,

    /// <summary>A dashed or dash-dot line, clear of outlines.</summary>
    Line,
}

/// <summary>How a sheet is drawn; widths in mm on paper.</summary>
public sealed record SheetStyle(SheetSign Sign, double Width);

/// <summary>Sheets are drawn thicker than they are, because they decide whether it leaks. All figures our own choice after trade practice, no source.</summary>
public static class SheetStyles
{
    /// <summary>White between stacked sheets; less where a stack would stray too far, but never so little that sheets merge.</summary>
    public static IReadOnlyList<double> Gaps { get; } = [0.7, 0.5, 0.4];

    /// <summary>White between a dashed sheet and the outline beside it.</summary>
    public const double LineClear = 0.35;

    /// <summary>How far a drawn edge may stray from its true place.</summary>
    public const double Budget = 2.5;

    /// <summary>No lap is drawn shorter.</summary>
    public const double LeastLap = 3.0;

    /// <summary>A joggle begins that far outside the lap.</summary>
    public const double JoggleOutside = 2.0;

    /// <summary>Fills keep that clear of bands.</summary>
    public const double FillClear = 0.25;

    /// <param name="scale">s of 1:s.</param>
    public static SheetStyle Of(Part part, double scale)
    {
        var drawn = part.Sheet!.Thickness / scale;
        double At(double large, double middle, double small) => Math.Max(drawn, scale <= 5 ? large : scale <= 10 ? middle : small);
        return part.Material.LayerCode switch
        {
            "VC" => new(SheetSign.Line, 0.35),
            "SM" => new(SheetSign.Line, 0.25),
            "DP" => new(SheetSign.Blocks, At(0.7, 0.6, 0.5)),
            "WP" when part.Sheet.Thickness >= 2.5 => new(SheetSign.Band, At(0.5, 0.45, 0.6)), // bitumen, a band a sheet
            "WP" => new(SheetSign.Band, At(0.7, 0.6, 0.5)),
            "SE" => new(SheetSign.Band, At(1.0, 1.0, 0.8)),
            _ => new(SheetSign.Band, At(0.5, 0.5, 0.35)),
        };
    }

    /// <summary>Poured, not laid from a roll: mastic asphalt.</summary>
    public static bool IsPoured(Part part) => part.Material.Fill == "asphalt";

    /// <summary>Least drawn thickness of things of metal or sealant that are not sheets; 0 for other parts.</summary>
    public static double LeastOf(Part part, double scale) => part.Material.LayerCode switch
    {
        "SE" => scale <= 10 ? 1.0 : 0.8,
        "FX" or "ME" => scale <= 10 ? 0.7 : 0.5,
        _ => 0,
    };
}
