using DetailGen.Drawing.Sheets;
using DetailGen.Library.Schedules;
using DetailGen.Library.Working;
using DetailGen.Physics.Moisture;

namespace DetailGen.Library.Wording;

/// <summary>What the detail loses and whether it stays dry, in a few lines for its first sheet. The figures are those of the report.</summary>
internal static class HeatFigureWords
{
    private const string NotCalculated = "not calculated";

    /// <param name="moisture">Null where there is no sound climate to calculate in.</param>
    internal static IReadOnlyList<FigureLine> Of(Worked worked, MoistureWork? moisture) =>
    [
        .. worked.Buildups.Select(stack => new FigureLine($"U-value, {stack.Buildup.Title.ToLowerInvariant()}", $"{ScheduleTable.UValue(stack.UValue)} W/m²K")), .. Junction(worked), .. Condensation(moisture),
    ];

    private static IEnumerable<FigureLine> Junction(Worked worked)
    {
        if (worked.Heat is not { } heat)
        {
            return [new("Ψ, temperature factor", NotCalculated)];
        }

        var (film, factor) = worked.Preset.FrsiFilm == "heat-flow" ? (", heat flow", heat.Factor) : ("", heat.MouldFactor);
        return
        [
            new("Ψ, inside dimensions", $"{Figures.OnSheet(heat.PsiInternal.Value, 3)} W/mK"),
            new("Ψ, outside dimensions", $"{Figures.OnSheet(heat.PsiExternal.Value, 3)} W/mK"),
            new($"Temperature factor{film}", $"{Figures.OnSheet(factor.Value, 3)}, estimated"),
        ];
    }

    // By a climate that nobody chose, which is invented, nothing is said on a drawing.
    private static IEnumerable<FigureLine> Condensation(MoistureWork? moisture) => moisture is not { Named: true } work
        ? [new("Condensation", NotCalculated)]
        :
        [
            .. work.Buildups.Select(built => new FigureLine($"Condensation, {MoistureSentences.Name(built).ToLowerInvariant()}", Outcome(built.Year))),
            new("in the climate", work.Outside.Id + (work.Outside.Origin == "invented" ? ", invented" : "")),
        ];

    private static string Outcome(CondensationYear year) => year.Verdict switch
    {
        MoistureVerdict.Dry => "none",
        MoistureVerdict.Dries => $"at most {MoistureSentences.Grams(year.Peak)}, dries",
        _ => $"{MoistureSentences.Grams(year.Residual)} left each year",
    };
}
