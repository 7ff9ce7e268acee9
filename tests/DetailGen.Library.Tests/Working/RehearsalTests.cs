using DetailGen.Library.Working;

namespace DetailGen.Library.Tests.Working;

public class RehearsalTests
{
    // nobody waits for it in a run, so a fault in it would not show
    [Fact]
    public void It_draws_to_the_end() => Assert.All(Rehearsal.Draw(), file => Assert.NotEmpty(file.Bytes));

    [Fact]
    public void It_is_held_once_in_a_process() => Assert.Same(Rehearsal.Begin(), Rehearsal.Begin());
}
