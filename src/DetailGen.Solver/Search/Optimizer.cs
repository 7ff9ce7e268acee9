using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>
/// Meets the levels in order, and each of them part by part (<see cref="Coupling"/>): what is least in every part is least in all. A part's least cost is enclosed
/// from below (refuted costs, multiples of the claims) and above (assignments found). First the few terms that stand against each other are looked for
/// (<see cref="Gather"/>). Where that does not get on, the whole cost is asked for at several heights of the open span in turn. Each search has limited effort,
/// so that none that goes astray holds up the rest, and more each round; the effort grows without end, so the enclosing is complete. A settled cost is kept as a bound for all later levels: since the parts were settled each by itself, that leaves them apart. Ties go
/// to the smaller value by name.
/// </summary>
internal sealed class Optimizer(Problem problem, IReadOnlyList<Variable> variables, long firstEffort = Optimizer.FirstEffort)
{
    /// <summary>Steps that the first searches for a cost may take before they are given up.</summary>
    private const long FirstEffort = 40_000;
    private const int MostPrices = 4;

    /// <summary>How far above what is proven the next cost is asked for, of the span that is open. A search that goes astray at one may be short at another.</summary>
    private static readonly long[] Eighths = [0, 1, 4, 8];
    private readonly State _state = problem.State;
    private readonly Finder _finder = problem.Finder;
    private readonly Probing _probing = new(problem.State);
    private long[]? _best;

    /// <summary>The best assignment so far, model variables and costs; null before the first.</summary>
    public long[]? Best => _best;

    /// <summary>What all runs have taken so far.</summary>
    public long Steps => _state.Steps;

    /// <summary>Yes: <see cref="Best"/> is the optimum. No: the hard claims and what is supposed contradict each other.</summary>
    /// <param name="targets">Where to look first; the optimum does not depend on it.</param>
    /// <param name="supposed">Values that variables have from outside.</param>
    public Found Run(long[] targets, long budget, params ReadOnlySpan<(int Id, long Value)> supposed)
    {
        problem.Reset();
        _finder.Forget();
        _best = null;
        _finder.Budget = budget;
        targets.CopyTo(_finder.Targets, 0);
        foreach (var (id, value) in supposed)
        {
            if (!_state.AtLeast(id, value, State.Supposed) || !_state.AtMost(id, value, State.Supposed))
            {
                return Found.No;
            }
        }

        var first = new long[_state.VariableCount];
        if (problem.Assign(first) is var found and not Found.Yes)
        {
            return found;
        }

        _best = first;
        foreach (var objective in problem.Objectives)
        {
            if (!Minimise(objective))
            {
                return Found.Spent;
            }
        }

        return BreakTies() ? Found.Yes : Found.Spent;
    }

    private bool Minimise(Objective objective)
    {
        problem.Enter(objective);
        problem.RaiseCosts(objective, _best!);
        Settle();
        if (objective.Sum.At(_best) == objective.Sum.Least(_state))
        {
            // every term is at its least, in all optima
            objective.Sum.Fix(_state);
            Settle();
            return _state.Steps < _state.StepLimit;
        }

        foreach (var goal in Goal.Of(objective, problem))
        {
            if (!Enclose(goal, goal, firstEffort))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Finds the least cost of a goal, and settles it; of some terms of a greater goal only finds it, as a bound of the state.</summary>
    /// <param name="whole">The goal that the terms are of.</param>
    /// <param name="effort">Steps that the first searches may take before they are given up.</param>
    /// <returns>False where the budget is spent, or for some terms of a greater goal a lesser effort.</returns>
    private bool Enclose(Goal goal, Goal whole, long effort)
    {
        var (_, _, part, sum, cost, grain) = goal;
        var high = sum.At(_best);
        var prices = 0;
        var shares = goal == whole ? goal.Shares(_state) : [];
        var gathered = 0L;
        var stride = 0L;
        var attempt = goal == whole ? Eighths.Length - 1 : 0; // the best is often the least; what stands against other terms seldom is
        var spent = 0;
        while (true)
        {
            if (goal == whole)
            {
                _ = _state.AtMost(cost, high, State.Supposed);
            }

            // The cost's domain has the grain, so its bounds are what is proven and what is found.
            Settle();
            var low = _state.Lows[cost];
            if (low >= high)
            {
                return _state.Steps < _state.StepLimit;
            }

            if (shares.Count > 0 && gathered < effort)
            {
                gathered = effort;
                if (Gather(goal, shares, effort))
                {
                    return true;
                }

                high = sum.At(_best);
                continue;
            }

            var open = (high - low) / grain - 1;
            switch (AskWithin(part, effort, new Literal(cost, false, low + Math.Min(open, Math.Max(stride, open * Eighths[attempt] / 8)) * grain)))
            {
                case Found.Yes:
                    high = sum.At(_finder.Solution);
                    TakeBetter(whole);
                    stride = 0;
                    attempt = 0;
                    break;
                case Found.No:
                    stride = Math.Max((2 * stride) + 1, open / 16);
                    attempt = 0;
                    Price(1);
                    break;
                case Found.Spent when goal == whole && _state.Steps < _state.StepLimit:
                    spent++;
                    stride = 0;
                    attempt = (attempt + 1) % Eighths.Length;
                    effort += spent % Eighths.Length == 0 ? effort : 0;
                    Price(1 + spent / Eighths.Length);
                    break;
                default:
                    return false;
            }
        }

        // Only once a first look has not settled the level, for mostly it does; and again when the search is long, for by then the bounds are closer.
        void Price(int times)
        {
            if (_state.Lows[cost] >= high || prices >= Math.Min(times, MostPrices))
            {
                return;
            }

            Settle();
            if (prices > 0)
            {
                Probe(goal.Part);
            }

            prices++;
            if (new Pricing(problem, goal).Claim() is { } claim)
            {
                _state.Add(claim);
            }
        }
    }

    /// <summary>
    /// Asks for all shares at their least, each term a share of its own at first. Where some of these cannot be together, the least that their sum can be is found
    /// instead, and they become one share. The terms that stand against each other are few as a rule, so much less is searched than for the whole sum; and a sum that
    /// is settled share by share ties fewer variables together for later levels.
    /// </summary>
    /// <returns>False where that does not get on.</returns>
    private bool Gather(Goal goal, List<Goal> shares, long effort)
    {
        while (true)
        {
            Settle();
            Literal[] least = [.. shares.ConvertAll(share => new Literal(share.Cost, false, _state.Lows[share.Cost]))];
            switch (AskWithin(goal.Part, effort, least))
            {
                case Found.Yes:
                    TakeBetter(goal);
                    foreach (var literal in least)
                    {
                        _ = _state.AtMost(literal.Variable, literal.Value, State.Supposed);
                    }

                    _ = _state.AtMost(goal.Cost, goal.Sum.At(_best), State.Supposed);
                    Settle();
                    return _state.Steps < _state.StepLimit;
                case Found.No when _finder.Core.Count < shares.Count:
                    var blamed = shares.FindAll(share => _finder.Core.Exists(literal => literal.Variable == share.Cost));
                    var joined = Goal.Joined(blamed, _state);
                    shares.RemoveAll(blamed.Contains);
                    shares.Add(joined);
                    if (!Enclose(joined, goal, effort))
                    {
                        return false;
                    }

                    break;
                default:
                    return false;
            }
        }
    }

    /// <summary>Takes what was found over where it costs the goal less.</summary>
    private void TakeBetter(Goal goal)
    {
        if (goal.Sum.At(_finder.Solution) < goal.Sum.At(_best))
        {
            Take(_best!, goal.Part);
            Take(_best!, goal.Sum.Variables);
        }
    }

    /// <summary>A search that is given up after so many steps; what it learnt stays for the next.</summary>
    private Found AskWithin(int[] part, long effort, params ReadOnlySpan<Literal> supposed)
    {
        var limit = _state.StepLimit;
        _state.StepLimit = Math.Min(limit, _state.Steps + effort);
        var found = _finder.Ask(supposed, part);
        _state.StepLimit = limit;
        return found;
    }

    private bool BreakTies()
    {
        var coupling = Coupling.Of(_state);
        var parts = coupling.Parts(problem.Variables);
        foreach (var variable in variables)
        {
            var id = variable.Id;
            if (_best![id] > _state.Lows[id])
            {
                switch (_finder.Ask([new Literal(id, false, _best[id] - 1)], parts[coupling.PartOf(id)], id))
                {
                    case Found.Spent:
                        return false;
                    case Found.Yes:
                        Take(_best, parts[coupling.PartOf(id)]);
                        break;
                    default:
                        break;
                }
            }

            if (!_state.AtMost(id, _best[id], State.Supposed) || !_state.AtLeast(id, _best[id], State.Supposed))
            {
                throw new System.Diagnostics.UnreachableException();
            }

            Settle();
            if (_state.Steps >= _state.StepLimit)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Takes these variables over from what the finder found.</summary>
    private void Take(long[] into, int[] variables) => Take(into, variables, _finder.Solution);

    private static void Take(long[] into, int[] variables, ReadOnlySpan<long> from)
    {
        foreach (var id in variables)
        {
            into[id] = from[id];
        }
    }

    private void Probe(int[] part)
    {
        if (!_probing.Run(part))
        {
            throw new System.Diagnostics.UnreachableException();
        }
    }

    private void Settle()
    {
        if (!_state.Propagate())
        {
            throw new System.Diagnostics.UnreachableException();
        }
    }
}
