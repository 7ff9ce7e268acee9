using DetailGen.Details.Solving;

namespace DetailGen.Details.Tests.Solving;

public class FirstTests
{
    [Fact]
    public void Look()
    {
        foreach (var junction in new[] { Trial.Parapet, Trial.Abutment })
        {
            foreach (var wall in new[] { Trial.CavityWall, Trial.SolidWall })
            {
                foreach (var roof in new[] { Trial.TimberRoof, Trial.SlabRoof })
                {
                    var clock = System.Diagnostics.Stopwatch.StartNew();
                    var solution = DetailSolver.Solve(Trial.Preset(junction, wall, roof), Trial.Shipped);
                    Console.Error.WriteLine($"{junction.Id} {wall.Id} {roof.Id}: {clock.Elapsed.TotalMilliseconds:0} ms {solution.GetType().Name}");
                    clock.Restart();
                    solution = DetailSolver.Solve(Trial.Preset(junction, wall, roof), Trial.Shipped);
                    Console.Error.WriteLine($"   again {clock.Elapsed.TotalMilliseconds:0} ms");
                    if (solution is Solution.Solved solved)
                    {
                        Console.Error.WriteLine(string.Join("\n", solved.Warnings));
                        foreach (var value in solved.Values.Where(value => value.Why.Kind is not (WhyKind.Default or WhyKind.Given)))
                        {
                            Console.Error.WriteLine($"   {value.Key} {value.Text}: {value.Why.Kind} {value.Why.Text}");
                        }
                        Console.Error.WriteLine(string.Join(", ", solved.Heat.Select(heat => $"{heat.Element} {heat.Transmittance:0.0000}")));
                    }
                    else if (solution is Solution.Contradiction no)
                    {
                        Console.Error.WriteLine(string.Join("\n", no.Members.Select(member => member.Text)) + "\n" + string.Join("\n", no.Repairs.Select(repair => repair.Text)));
                    }
                }
            }
        }
    }
}
