using DetailGen.Physics.Fields;
using DetailGen.Testing;

namespace DetailGen.Physics.Tests.Fields;

public class SurfaceTemperaturesTests
{
    [Fact]
    public void A_plane_slab_has_one_temperature_along_each_surface()
    {
        var blocks = new FieldLawTests.Blocks([300, 200], [100, 150], [0.04, 0.04, 1.5, 1.5], 0.13, 0.04);
        var profiles = FieldLawTests.Solved(blocks.Case()).Surfaces!.Profiles;
        Assert.Equal(2, profiles.Count);
        var density = 20 / (0.13 + (0.1 / 0.04) + (0.15 / 1.5) + 0.04);
        foreach (var profile in profiles)
        {
            var expected = profile.Environment.Temperature > 10 ? 20 - (density * 0.13) : density * 0.04;
            Assert.All(profile.Places, place => Assert.Equal(expected, place.Temperature, 1e-6));
            Assert.Equal([0.0, 500.0], [profile.Places[0].Along, profile.Places[^1].Along]);
        }
    }

    [Fact]
    public void A_surface_holds_its_coldest_place_and_takes_the_heat_that_flows() => IsothermsTests.Any.Always(
        blocks =>
        {
            var asked = blocks.Case();
            var answer = FieldLawTests.Solved(asked);
            var films = asked.Boundary.Where(line => line.Environment is not null).ToDictionary(line => line.Environment!.Name, line => line.Film);
            foreach (var profile in answer.Surfaces!.Profiles)
            {
                Assert.Equal(profile.Places.Select(place => place.Along), profile.Places.Select(place => place.Along).Order());

                // Corner, middle, corner of each side: Simpson's rule sums its parabola exactly.
                var places = profile.Places;
                var flow = Enumerable.Range(0, (places.Count - 1) / 2).Sum(i => (places[2 * i + 2].Along - places[2 * i].Along) / 1000
                    * (profile.Environment.Temperature - (places[2 * i].Temperature + (4 * places[2 * i + 1].Temperature) + places[2 * i + 2].Temperature) / 6) / films[profile.Environment.Name]);
                Assert.Equal(answer.Flows.Single(one => one.Environment == profile.Environment.Name).Flow, flow, 1e-6 * Math.Abs(flow));
            }

            var inside = answer.Surfaces.Profiles.Where(profile => profile.Environment.Side == FieldSide.Internal).SelectMany(profile => profile.Places).ToArray();
            Assert.Equal(20 * answer.Factor!.Value, inside.Min(place => place.Temperature), 0.02);
        },
        cases: 20);

    [Fact]
    public void Lines_of_one_air_that_go_on_from_one_another_are_one_surface_whatever_their_order()
    {
        var whole = new FieldLawTests.Blocks([200, 300], [100], [0.5, 0.04], 0.13, 0.04).Case();
        var warm = whole.Boundary.First(line => line.Environment?.Side == FieldSide.Internal);
        var (from, to) = (warm.Line[0], warm.Line[^1]);
        FieldPlace middle = new(from.X + (0.4 * (to.X - from.X)), from.Y);
        var split = whole with
        {
            Boundary = [warm with { Line = [middle, to] }, .. whole.Boundary.Where(line => line != warm), warm with { Line = [from, middle] }],
        };
        var one = FieldLawTests.Solved(whole).Surfaces!.Profiles.Single(profile => profile.Environment == warm.Environment);
        var other = FieldLawTests.Solved(split).Surfaces!.Profiles.Single(profile => profile.Environment == warm.Environment);
        Assert.Equal(one.Places[0].At, other.Places[0].At);
        Assert.Equal(one.Places[^1], other.Places[^1]);
        Assert.Equal([0.0, 500.0], [other.Places[0].Along, other.Places[^1].Along]);
    }
}
