using DetailGen.Physics.Fields;
using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>All places of one temperature.</summary>
/// <param name="Temperature">°C.</param>
/// <param name="Lines">mm; one that is closed ends where it begins.</param>
public sealed record Isotherm(double Temperature, IReadOnlyList<IReadOnlyList<Point>> Lines);

/// <summary>Ways that heat takes.</summary>
/// <param name="Each">What flows between two neighbours, W/m.</param>
/// <param name="Lines">mm; one that is closed ends where it begins.</param>
public sealed record FluxTubes(double Each, IReadOnlyList<IReadOnlyList<Point>> Lines);

/// <summary>The air of an environment as the thermal model knows it.</summary>
/// <param name="Name">room, lower-room, higher-room or outside.</param>
/// <param name="Temperature">°C.</param>
/// <param name="Films">Surface resistances in m²·K/W, lesser first.</param>
/// <param name="Surfaces">Where solids meet it, mm.</param>
public sealed record AirBeside(string Name, double Temperature, IReadOnlyList<double> Films, IReadOnlyList<IReadOnlyList<Point>> Surfaces);

/// <summary>What of a junction's solved field can be drawn: places in mm as in the thermal model, which is the section with its roof laid level.</summary>
/// <param name="Isotherms">By rising temperature.</param>
/// <param name="DewPoint">Where inside air of that dew point would just condense, were it there; no lines where no place is so cold.</param>
/// <param name="Flux">Between each two neighbours flows the same heat.</param>
/// <param name="Coldest">The coldest inside surface.</param>
/// <param name="Solids">Outlines of what conducts, one region for each material and conductivity.</param>
public sealed record ThermalPicture(
    IReadOnlyList<Isotherm> Isotherms, Isotherm DewPoint, FluxTubes Flux, Point Coldest, IReadOnlyList<AirBeside> Airs, IReadOnlyList<ThermalSolid> Solids)
{
    /// <summary>As many lines as a drawing carries and can be followed.</summary>
    private const int Fewest = 8, Most = 14;

    /// <summary>So many ways of heat can be told apart beside them.</summary>
    private const int MostTubes = 16;

    /// <summary>Whole degrees, those that people count in first.</summary>
    private static readonly double[] Steps = [1, 2, 5, 3, 4];

    private static readonly double[] Rounded = [1, 2, 5, 10];

    /// <param name="dewPoint">Of the inside air, °C.</param>
    public static ThermalPicture Of(JunctionHeat heat, double dewPoint)
    {
        var (least, most) = heat.Isotherms.Range;
        var lines = heat.Model.Case.Boundary.Where(line => line.Environment is not null).ToLookup(line => line.Environment!);
        return new(
            [.. Temperatures(least, most).Select(temperature => At(heat, temperature))],
            At(heat, dewPoint),
            Tubes(heat.FluxLines),
            Place(heat.Factor.At),
            [.. lines.Select(air => new AirBeside(
                air.Key.Name, air.Key.Temperature, [.. air.Select(line => line.Film).Distinct().Order()],
                [.. air.Select(line => (IReadOnlyList<Point>)[.. line.Line.Select(Place)])]))],
            heat.Model.Solids);
    }

    /// <summary>What arithmetic may put a place beyond the air that it touches, as a share of the whole difference: a corner so far from all warmth that it has the temperature outside would else get a line of it.</summary>
    private const double Hair = 1e-3;

    /// <summary>Whole degrees between the coldest and the warmest place, at a step that gives 8 to 14 of them where any does, else at the step that comes nearest.</summary>
    public static IReadOnlyList<double> Temperatures(double least, double most)
    {
        var hair = (most - least) * Hair;
        var (above, below) = (least + hair, most - hair);
        double[] At(double step) => [.. Enumerable.Range((int)Math.Floor(above / step) + 1, Math.Max(0, (int)Math.Ceiling(below / step) - (int)Math.Floor(above / step) - 1)).Select(i => i * step)];
        var all = Steps.Select(At).ToArray();
        return all.FirstOrDefault(lines => lines.Length is >= Fewest and <= Most) ?? all.MinBy(lines => Math.Max(Fewest - lines.Length, lines.Length - Most))!;
    }

    private static FluxTubes Tubes(FluxLines lines)
    {
        var each = Each(lines.Whole);
        return new(each, [.. lines.Every(each).Select(line => (IReadOnlyList<Point>)[.. line.Select(Place)])]);
    }

    /// <summary>What is to flow between two lines: the least of 1, 2 or 5, times a power of ten, that parts the whole into no more than can be told apart.</summary>
    /// <param name="whole">W/m, above 0.</param>
    public static double Each(double whole)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(whole / MostTubes)));
        return Rounded.Select(figure => figure * power).First(each => whole / each <= MostTubes);
    }

    private static Isotherm At(JunctionHeat heat, double temperature) =>
        new(temperature, [.. heat.Isotherms.Of(temperature).Select(line => (IReadOnlyList<Point>)[.. line.Select(Place)])]);

    private static Point Place(FieldPlace at) => new(at.X, at.Y);
}
