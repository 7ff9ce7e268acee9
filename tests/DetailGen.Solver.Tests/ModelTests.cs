namespace DetailGen.Solver.Tests;

/// <summary>Small models whose answer can be seen by eye.</summary>
public class ModelTests
{
    [Fact]
    public void There_are_no_ranges_where_claims_contradict_each_other_or_the_budget_is_spent()
    {
        var model = new Model();
        var height = model.Add("height", Domain.Range(0, 100));
        model.Require("high", height >= 60);
        Assert.Equal([(60L, 100L)], model.Ranges(height)![0].Values);
        model.Require("low", height <= 50);
        Assert.Null(model.Ranges(height));

        var poor = new Model { Budget = 1 };
        var (a, b) = (poor.Add("a", Domain.Range(0, 100)), poor.Add("b", Domain.Range(0, 100)));
        poor.Require("sum", a + b >= 150);
        poor.Require("either", Claim.Any(a <= 60, b <= 60));
        Assert.Null(poor.Ranges(a));
    }

    [Fact]
    public void A_wish_is_kept_where_nothing_forbids_it()
    {
        var model = new Model();
        var size = model.Add("size", Domain.Range(0, 1000, 10));
        model.Then(new Level.Wished("wishes", [new Wish(size, 450)]));
        var best = Assert.IsType<Answer.Best>(model.Solve());
        Assert.Equal(450, best.Values[size]);
        Assert.Empty(best.Binding(size));
    }

    [Fact]
    public void A_wish_yields_to_a_rule_by_the_fewest_steps_and_the_rule_is_named()
    {
        var model = new Model();
        var kerb = model.Add("kerb", Domain.Range(1500, 4000, step: 50));
        var board = model.Add("board", Domain.Of(500, 800, 1000, 1200));
        model.Require("upstand", kerb + -1 * board >= 1500);
        model.Give("given.board", board, 1000);
        model.Then(new Level.Wished("wishes", [new Wish(kerb, 2000)]));
        var best = Assert.IsType<Answer.Best>(model.Solve());
        Assert.Equal(2500, best.Values[kerb]);
        Assert.Equal(10, best.Costs[0].Total);
        Assert.Equal(["given.board", "upstand"], best.Binding(kerb));
    }

    [Fact]
    public void Where_a_step_could_be_had_at_a_price_the_claims_it_would_break_alone_are_named()
    {
        var model = new Model();
        var a = model.Add("a", Domain.Range(0, 10));
        var b = model.Add("b", Domain.Range(0, 10));
        model.Require("sum", (a + b).EqualTo(7));
        model.Then(new Level.Wished("wishes", [new Wish(a, 0), new Wish(b, 7)]));
        var best = Assert.IsType<Answer.Best>(model.Solve());
        Assert.Equal((0, 7), (best.Values[a], best.Values[b]));
        model.Then(new Level.Least("least", b));
        model.Require("cap", b <= 5);
        best = Assert.IsType<Answer.Best>(model.Solve());
        Assert.Equal((2, 5), (best.Values[a], best.Values[b]));
        Assert.Equal(["cap", "sum"], best.Binding(a));
    }

    [Fact]
    public void Values_of_a_list_count_their_places()
    {
        var model = new Model();
        var listed = model.Add("listed", Domain.Of(25_000, 30_000, 100_000, 120_000));
        model.Require("least", listed >= 31_000);
        model.Then(new Level.Wished("wishes", [new Wish(listed, 25_000)]));
        var best = Assert.IsType<Answer.Best>(model.Solve());
        Assert.Equal(100_000, best.Values[listed]);
        Assert.Equal(2, best.Costs[0].Total);
    }

    [Fact]
    public void A_wish_between_two_members_means_the_nearer_and_of_equally_near_ones_the_smaller()
    {
        var domain = Domain.Of(10, 20, 40);
        Assert.Equal(1, domain.NearestPlace(29));
        Assert.Equal(1, domain.NearestPlace(30));
        Assert.Equal(2, domain.NearestPlace(31));
        Assert.Equal(0, domain.NearestPlace(-5));
        Assert.Equal(2, domain.NearestPlace(500));
        Assert.Equal(2, Domain.Range(0, 100, 10).NearestPlace(25));
    }

    [Fact]
    public void An_earlier_level_is_never_sold_for_a_later_one()
    {
        var model = new Model();
        var size = model.Add("size", Domain.Range(0, 100));
        model.Then(new Level.Wanted("first", [new SoftClaim("at-least", size >= 60)]));
        model.Then(new Level.Wanted("second", [new SoftClaim("small.a", size <= 50), new SoftClaim("small.b", size <= 40)]));
        var best = Assert.IsType<Answer.Best>(model.Solve());
        Assert.Equal(60, best.Values[size]);
        Assert.Empty(best.Costs[0].Broken);
        Assert.Equal(["small.a", "small.b"], best.Costs[1].Broken);
        Assert.Equal(30, best.Costs[1].Total);
    }

    [Fact]
    public void Fewer_broken_claims_go_before_a_smaller_shortfall()
    {
        var model = new Model();
        var size = model.Add("size", Domain.Range(0, 100));
        model.Then(new Level.Wanted("rules", [new SoftClaim("big", size >= 100), new SoftClaim("small.a", size <= 10), new SoftClaim("small.b", size <= 12)]));
        var best = Assert.IsType<Answer.Best>(model.Solve());
        Assert.Equal(["big"], best.Costs[0].Broken);
        Assert.Equal(10, best.Values[size]);
        Assert.Equal(90, best.Costs[0].Total);
    }

    [Fact]
    public void Ties_go_to_the_smaller_value_in_ordinal_order_of_the_names()
    {
        var model = new Model();
        var late = model.Add("b", Domain.Range(0, 9));
        var early = model.Add("a", Domain.Range(0, 9));
        model.Require("sum", (late + early).EqualTo(9));
        var best = Assert.IsType<Answer.Best>(model.Solve());
        Assert.Equal((0, 9), (best.Values[early], best.Values[late]));
    }

    [Fact]
    public void A_table_ties_a_result_to_its_key()
    {
        var model = new Model();
        var thickness = model.Add("thickness", Domain.Of(50, 75, 100));
        var resistance = model.Add("resistance", Domain.Range(0, 5000));
        model.Require("table", Claim.Table(resistance, thickness, (50, 2270), (75, 3400), (100, 4540)));
        model.Require("target", resistance >= 3000);
        model.Then(new Level.Least("thinnest", thickness));
        Assert.Equal(75, Assert.IsType<Answer.Best>(model.Solve()).Values[thickness]);
    }

    [Fact]
    public void The_greatest_of_sums_is_one_of_them()
    {
        var model = new Model();
        var a = model.Add("a", Domain.Range(3, 5));
        var b = model.Add("b", Domain.Range(0, 4));
        var greatest = model.Add("greatest", Domain.Range(0, 100));
        model.Require("greatest", Claim.Greatest(greatest, a, b + 2));
        Assert.Equal([(3L, 6L)], model.Ranges(greatest)![0].Values);
    }

    [Fact]
    public void A_conflict_names_only_what_is_needed()
    {
        var model = new Model();
        var a = model.Add("a", Domain.Range(0, 1000));
        var b = model.Add("b", Domain.Range(0, 1000));
        model.Require("innocent", a + b <= 1900);
        model.Require("least", a >= b + 50);
        model.Give("given.a", a, 100);
        model.Give("given.b", b, 80);
        Assert.Equal(["given.a", "given.b", "least"], Assert.IsType<Answer.Conflict>(model.Solve()).Tags);
        Assert.Equal(
            [("given.a", 130), ("given.b", 50)],
            model.Repairs().Select(repair => (repair.Changes[0].Tag, repair.Changes[0].Value)));
        Assert.Equal(["given.b"], model.Repairs(tag => tag == "given.b").Select(repair => repair.Changes[0].Tag));
    }

    [Fact]
    public void A_conflict_of_which_it_is_too_dear_to_tell_whether_a_member_can_be_spared_says_so()
    {
        var model = new Model { Budget = 20_000 };
        var a = model.Add("a", Domain.Range(0, 10));
        // ten that all differ in nine places contradict each other too, which only a long search shows
        Variable[] apart = [.. Enumerable.Range(0, 10).Select(i => model.Add($"place {i}", Domain.Range(1, 9)))];
        for (var i = 0; i < apart.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                model.Require(null, Claim.Any(apart[i] >= apart[j] + 1, apart[j] >= apart[i] + 1));
            }
        }

        model.Require("least", a >= 6);
        model.Require("most", a <= 5);
        var told = Assert.IsType<Answer.Conflict>(model.Solve());
        Assert.Equal(["least", "most"], told.Tags);
        Assert.False(told.IsMinimal);
    }

    [Fact]
    public void A_given_value_off_its_list_is_told_the_neighbours_on_the_list()
    {
        var model = new Model();
        var size = model.Add("size", Domain.Of(100, 140, 215), tag: "stock.size", without: Domain.Range(0, 500));
        model.Give("given.size", size, 150);
        Assert.Equal(["given.size", "stock.size"], Assert.IsType<Answer.Conflict>(model.Solve()).Tags);
        Assert.Equal([140L, 215L], model.Repairs().Select(repair => Assert.Single(repair.Changes).Value));
    }

    [Fact]
    public void Where_no_single_change_helps_the_fewest_that_do_are_told()
    {
        var model = new Model();
        var a = model.Add("a", Domain.Range(0, 100));
        var b = model.Add("b", Domain.Range(0, 100));
        model.Require("a", a >= 10);
        model.Require("b", b <= 90);
        model.Give("given.a", a, 5);
        model.Give("given.b", b, 95);
        var changes = Assert.Single(model.Repairs()).Changes;
        Assert.Equal([("given.a", 10L), ("given.b", 90L)], changes.Select(change => (change.Tag, change.Value)));
    }

    [Fact]
    public void Ranges_have_gaps_where_listed_sizes_leave_them_and_tell_what_stops_them()
    {
        var model = new Model();
        var brick = model.Add("brick", Domain.Of(100, 140));
        var gap = model.Add("gap", Domain.Range(50, 60, 5));
        var width = model.Add("width", Domain.Range(0, 1000, 5));
        model.Require("eq.width", width.EqualTo(brick + gap));
        model.Require("limit", width <= 195);
        var ranges = model.Ranges(width, brick)!;
        Assert.Equal([(150L, 160L), (190L, 195L)], ranges[0].Values);
        Assert.Equal(["limit"], ranges[0].Highest);
        Assert.Equal(["eq.width"], ranges[0].Lowest);
        Assert.Equal([(100L, 100L), (140L, 140L)], ranges[1].Values);
    }

    // A coping's width in thousandths: sizes in large steps and a foil in small ones make it up, and its rise is a quotient of it.
    [Theory]
    [InlineData(3, 5_000, 60_000)]
    [InlineData(7, 20_000, 45_000)]
    [InlineData(2, 40_000, 61_000)]
    public void Ranges_of_a_sum_with_a_quotient_are_those_that_counting_finds(long fall, long foilMost, long riseMost)
    {
        var model = new Model();
        var wall = model.Add("wall", Domain.Range(100_000, 140_000, 20_000));
        var foil = model.Add("foil", Domain.Range(5, foilMost, 5));
        var width = model.Add("width", Domain.Range(0, 400_000, 5));
        var run = model.Add("run", Domain.Range(1, 10));
        var rise = model.Add("rise", Domain.Range(0, 400_000));
        model.Require("eq.width", width.EqualTo(wall + foil));
        model.Require("fall", run.EqualTo(fall));
        model.Require("eq.rise", Claim.Quotient(rise, width, run));
        model.Require("low", rise <= riseMost);

        var feasible = new SortedSet<long>();
        for (long w = 100_000; w <= 140_000; w += 20_000)
        {
            for (long f = 5; f <= foilMost; f += 5)
            {
                if ((w + f + fall - 1) / fall <= riseMost)
                {
                    feasible.Add(w + f);
                }
            }
        }

        var found = model.Ranges(width)![0].Values;
        Assert.Equal(feasible.Count, found.Sum(piece => (piece.High - piece.Low) / 5 + 1));
        Assert.All(found, piece => Assert.True(feasible.Contains(piece.Low) && feasible.Contains(piece.High)));
    }

    [Fact]
    public void A_spent_budget_is_told_and_not_guessed_over()
    {
        var model = new Model { Budget = 3 };
        var a = model.Add("a", Domain.Range(0, 1000));
        var b = model.Add("b", Domain.Range(0, 1000));
        model.Require("up", a >= b + 1);
        model.Require("down", b >= a + 1);
        Assert.IsType<Answer.NotProven>(model.Solve());
    }

    [Fact]
    public void A_chain_that_creeps_up_a_huge_domain_still_ends_in_a_conflict()
    {
        var model = new Model();
        var a = model.Add("a", Domain.Range(0, 3_000_000));
        var b = model.Add("b", Domain.Range(0, 3_000_000));
        model.Require("up", a >= b + 1);
        model.Require("down", b >= a + 1);
        Assert.Equal(["down", "up"], Assert.IsType<Answer.Conflict>(model.Solve()).Tags);
    }

    [Fact]
    public void Claims_on_a_shared_sum_contradict_each_other_at_once()
    {
        var model = new Model { Budget = 1000 };
        var a = model.Add("a", Domain.Range(0, 3_000_000));
        var b = model.Add("b", Domain.Range(0, 3_000_000));
        var c = model.Add("c", Domain.Range(0, 3_000_000));
        model.Share(a - b);
        model.Share(a - b - c);
        model.Require("up", a >= b + c + 1);
        model.Require("down", (2 * b) + c >= (2 * a) - c + 1);
        Assert.Equal(["down", "up"], Assert.IsType<Answer.Conflict>(model.Solve()).Tags);
    }

    [Fact]
    public void Values_that_claims_on_a_shared_sum_forbid_are_passed_over_at_once()
    {
        var model = new Model { Budget = 1000 };
        var a = model.Add("a", Domain.Range(0, 3_000_000));
        var b = model.Add("b", Domain.Range(0, 3_000_000));
        var c = model.Add("c", Domain.Range(0, 3_000_000));
        model.Share(a - b);
        model.Require("least", a - b >= 2_000_000);
        model.Require("near", Claim.All(c <= a - b, c >= a - b - 500));
        var range = model.Ranges(c)![0];
        Assert.Equal([(1_999_500, 3_000_000)], range.Values);
        Assert.Equal(["least", "near"], range.Lowest);
    }

    [Fact]
    public void Remainders_that_cannot_meet_are_a_conflict_at_once()
    {
        var model = new Model { Budget = 1000 };
        var a = model.Add("a", Domain.Range(0, 3_000_000, 500));
        var b = model.Add("b", Domain.Range(0, 3_000_000, 500));
        model.Require("odd", (2 * a + 4 * b).EqualTo(1_001_000 + 500));
        Assert.Equal(["odd"], Assert.IsType<Answer.Conflict>(model.Solve()).Tags);
    }

    [Fact]
    public void Sums_that_could_leave_the_whole_numbers_are_refused()
    {
        var model = new Model();
        var a = model.Add("a", Domain.Range(0, 1_000_000_000_000_000));
        model.Require("far", 1_000_000 * a >= 5);
        Assert.Throws<OverflowException>(() => model.Solve());
        Assert.Throws<OverflowException>(() => long.MaxValue * (2 * a));
    }

    [Fact]
    public void Variables_of_another_model_are_refused()
    {
        var model = new Model();
        var foreign = new Model().Add("foreign", Domain.Range(0, 1));
        Assert.Throws<ArgumentException>(() => model.Give("given", foreign, 1));
        model.Require("foreign", foreign >= 1);
        Assert.Throws<ArgumentException>(() => model.Solve());
    }

    /// <summary>A step of the best size gains 23 of the 6900 that the wishes lack, one of any other size less: 300 steps, all of them of that size.</summary>
    [Fact]
    public void A_cost_that_only_claim_and_wishes_together_bound_is_proven_in_few_steps()
    {
        var model = new Model { Budget = 100_000 };
        int[] gains = [7, 11, 13, 17, 19, 23];
        Variable[] sizes = [.. gains.Select((_, i) => model.Add($"size.{i}", Domain.Range(0, 1_000)))];
        var total = gains.Zip(sizes, (gain, size) => gain * size).Aggregate((Linear)0, (sum, term) => sum + term);
        model.Require("rule.total", total >= (gains.Sum() * 50) + 6_900);
        model.Then(new Level.Wished("defaults", [.. sizes.Select(size => new Wish(size, 50))]));

        var best = Assert.IsType<Answer.Best>(model.Solve());

        Assert.Equal(300, best.Costs[0].Total);
        Assert.Equal([50, 50, 50, 50, 50, 350], sizes.Select(size => best.Values[size]));
    }
}
