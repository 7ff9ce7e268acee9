using DetailGen.Drawing.Sheets;
using DetailGen.Drawing.Views;

namespace DetailGen.Drawing.Tests.Sheets;

public sealed class AdviceTests
{
    [Theory]
    [InlineData(5, false)]
    [InlineData(10, true)]
    [InlineData(20, true)]
    public void A_larger_scale_is_advised_only_where_there_is_one(double scale, bool isAdvised) =>
        Assert.Equal(isAdvised, SheetComposer.Told(new DrawingFault("budget", [], "A sheet is out of place."), scale).Contains("larger scale", StringComparison.Ordinal));
}
