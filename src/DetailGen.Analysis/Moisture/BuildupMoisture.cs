using DetailGen.Physics.Moisture;

namespace DetailGen.Analysis.Moisture;

/// <summary>A year of condensing and drying in a plain build-up, and the temperature factor of its inside face.</summary>
/// <param name="Turn">
/// How many layers, from the room, count with the lesser vapour factor; those beyond count with the greater. Vapour then comes easily to the cold place and leaves it
/// hardly: of all turns this one leaves the most water, so it is on the safe side of either of the two factors alone.
/// </param>
/// <param name="Asked">What was calculated.</param>
/// <param name="TemperatureFactor">Of the plain inside face, with the film of the mould criterion; corners are colder.</param>
public sealed record BuildupMoisture(MoistureModel Model, int Turn, CondensationCase Asked, CondensationYear Year, double TemperatureFactor)
{
    /// <summary>Layers are cut into strips of at most this resistance, m²·K/W.</summary>
    /// <remarks>ISO 13788:2012 (clause still to be read; from the notes of the check cases).</remarks>
    private const double LargestStrip = 0.25;

    public static BuildupMoisture Of(MoistureModel model, Climate climate)
    {
        var worst = Enumerable.Range(0, model.Layers.Count + 1).Where(turn => turn == 0 || model.Layers[turn - 1] is { } last && last.LeastSd != last.MostSd)
            .Select(turn => (Turn: turn, Asked: Case(model, turn, climate))).Select(one => (one.Turn, one.Asked, Year: Condensation.Of(one.Asked)))
            .OrderByDescending(one => one.Year.Residual).ThenByDescending(one => one.Year.Peak).ThenBy(one => one.Turn).First();
        var film = model.Total - model.Rsi + SurfaceCriterion.Film;
        return new(model, worst.Turn, worst.Asked, worst.Year, 1 - SurfaceCriterion.Film / film);
    }

    /// <summary>sd that a layer counts with, m.</summary>
    public double Sd(int layer) => Sd(Model, Turn, layer);

    private static CondensationCase Case(MoistureModel model, int turn, Climate climate) => new(
        [.. model.Layers.Select((layer, i) => new VapourLayer(layer.Layer.Element, layer.Resistance, Sd(model, turn, i)))],
        model.Rsi, model.Rse, climate, LargestStrip, [], null);

    private static double Sd(MoistureModel model, int turn, int layer) => layer < turn ? model.Layers[layer].LeastSd : model.Layers[layer].MostSd;
}
