namespace DetailGen.Physics.Fields;

/// <summary>
/// The ways that heat takes through a solved field, to be drawn: no heat crosses them, and between two of them the same flows all along. They are the lines of one value of the flow
/// function by which the lower bound was found.
/// </summary>
public sealed class FluxLines
{
    private readonly Contours _contours;

    /// <param name="step">Difference of the extreme temperatures, K: the flow is that of 1 K.</param>
    internal FluxLines(Mesh mesh, FlowField flow, double step) => _contours = new(mesh, (triangle, values) => flow.ValuesOf(triangle).CopyTo(values), 0, step);

    /// <summary>All that flows between two places, where it is most, W/m.</summary>
    public double Whole => _contours.Range.Most - _contours.Range.Least;

    /// <summary>Lines between each two neighbours of which that much flows; half as much flows between the outermost and the edges that let no heat pass.</summary>
    /// <param name="each">W/m, above 0.</param>
    /// <returns>mm; a closed one ends where it begins.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Nothing can flow between two lines.</exception>
    public IReadOnlyList<IReadOnlyList<FieldPlace>> Every(double each)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(each);
        var (least, most) = _contours.Range;
        return [.. Enumerable.Range(0, (int)Math.Ceiling((most - least) / each)).Select(i => least + ((i + 0.5) * each)).Where(value => value < most).SelectMany(_contours.Of)];
    }
}
