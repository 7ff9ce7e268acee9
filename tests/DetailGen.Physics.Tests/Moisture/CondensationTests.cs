using CsCheck;
using DetailGen.Physics.Moisture;
using DetailGen.Testing;

namespace DetailGen.Physics.Tests.Moisture;

public class CondensationTests
{
    private static readonly Gen<Climate> Climates = Gen.Select(Gen.Double[-15, 25].Array[12], Gen.Double[0.3, 0.95].Array[12], Gen.Double[16, 24], Gen.Double[0.2, 0.9]).Select((outside, humidity, inside, within) =>
        new Climate([.. outside], [.. outside.Zip(humidity, (t, share) => share * Saturation.Pressure(t))], [.. Enumerable.Repeat(inside, 12)], [.. Enumerable.Repeat(within * Saturation.Pressure(inside), 12)]));

    private static readonly Gen<VapourLayer> Layer = Gen.Select(Gen.Double[0.01, 4], Gen.OneOf(Gen.Const(0.0), Gen.Double[0.01, 1], Gen.Double[1, 100])).Select((resistance, sd) => new VapourLayer("layer", resistance, sd));

    private static readonly Gen<CondensationCase> Cases = Gen.Select(Layer.Array[1, 5], Climates).Select((layers, climate) =>
        new CondensationCase([new("face", 0.05, 0.1), .. layers], 0.13, 0.04, climate, 0.25, [], null));

    [Fact]
    public void Water_is_kept_account_of() => Cases.Always(asked =>
    {
        var year = Condensation.Of(asked);
        foreach (var wet in year.Interfaces)
        {
            Assert.All(wet.Accumulated, mass => Assert.True(mass >= 0));
            Assert.Equal(wet.Accumulated[(year.StartMonth!.Value + 11) % 12], wet.Change.Sum(), 1e-9 * (1 + wet.Change.Sum(Math.Abs)));
        }

        Assert.Equal(year.Residual, year.Interfaces.Sum(wet => wet.Change.Sum()), 1e-9 * (1 + year.Peak));
        Assert.Equal(year.Verdict == MoistureVerdict.Dry, year.StartMonth is null);
        Assert.Equal(year.Verdict == MoistureVerdict.Stays, year.Residual > 0);
    });

    [Fact]
    public void Finer_strips_never_find_less_water_in_a_month() => Gen.Select(Cases, Gen.Int[0, 11]).Always((asked, month) =>
    {
        double First(double strip) => Condensation.Of(asked with { LargestStrip = strip, StartMonth = month }).Interfaces.Sum(wet => wet.Change[month]);
        var (coarse, fine) = (First(0.5), First(0.0625));
        Assert.True(coarse <= 1e-9 || fine > 0, $"{coarse} and {fine}");
    });

    [Fact]
    public void Vapour_that_cannot_enter_does_not_condense() => Cases.Always(asked =>
    {
        // As dry inside as outside, and warmer: nowhere colder than the air that the vapour comes from.
        var climate = asked.Climate with
        {
            ExternalTemperature = [.. asked.Climate.ExternalTemperature.Select(t => Math.Min(t, 15))],
            InternalPressure = [.. asked.Climate.ExternalTemperature.Select(t => 0.9 * Saturation.Pressure(Math.Min(t, 15)))],
            ExternalPressure = [.. asked.Climate.ExternalTemperature.Select(t => 0.9 * Saturation.Pressure(Math.Min(t, 15)))],
        };
        Assert.Equal(MoistureVerdict.Dry, Condensation.Of(asked with { Climate = climate }).Verdict);
    });

    [Fact]
    public void Water_shut_in_at_first_is_never_more_than_was_there_where_nothing_condenses()
    {
        var climate = new Climate([.. Enumerable.Repeat(20.0, 12)], [.. Enumerable.Repeat(1000.0, 12)], [.. Enumerable.Repeat(20.0, 12)], [.. Enumerable.Repeat(1000.0, 12)]);
        Gen.Select(Gen.Double[0.1, 50], Gen.Double[0.1, 50], Gen.Double[1, 5000]).Always((inner, outer, mass) =>
        {
            var year = Condensation.Of(new([new("a", 0.1, inner), new("b", 0.1, outer)], 0.13, 0.04, climate, 0.25, [new(1, mass)], null));
            var rate = 2e-10 * (Saturation.Pressure(20) - 1000) * (1 / inner + 1 / outer) * 1000;
            Assert.Equal(Math.Max(0, mass - rate * 31 * 86_400), year.Interfaces[0].Accumulated[0], 1e-6 * mass);
            Assert.True(year.Peak <= mass);
        });
    }

    [Fact]
    public void Saturation_and_its_inverse_undo_each_other() =>
        Gen.Double[-60, 90].Always(temperature => Assert.Equal(temperature, Saturation.Temperature(Saturation.Pressure(temperature))!.Value, 1e-9));

    [Fact]
    public void A_damper_room_asks_more_of_the_surface() => Gen.Select(Climates, Gen.Double[1, 1.3]).Always((climate, more) =>
    {
        var damper = climate with { InternalPressure = [.. climate.InternalPressure.Select(pressure => pressure * more)] };
        var (before, after) = (SurfaceCriterion.Of(climate, 0.8).Factor, SurfaceCriterion.Of(damper, 0.8).Factor);
        Assert.True(before is null || after >= before);
    });

    [Fact]
    public void A_month_that_is_not_colder_outside_does_not_count()
    {
        var climate = new Climate([.. Enumerable.Repeat(25.0, 12)], [.. Enumerable.Repeat(1000.0, 12)], [.. Enumerable.Repeat(20.0, 12)], [.. Enumerable.Repeat(1100.0, 12)]);
        var criterion = SurfaceCriterion.Of(climate, 0.8);
        Assert.Equal((null, null), (criterion.Factor, criterion.CriticalMonth));
    }
}
