using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;

namespace DetailGen.Drawing.Tests.Sheets;

public class ColumnWidthsTests
{
    [Fact]
    public void Columns_of_short_words_give_to_those_of_long_ones_and_the_table_keeps_its_width()
    {
        Column[] columns = [new(10, ["Ref"]), new(40, ["Element"]), new(40, ["Material"]), new(20, ["mm"], Align.Right)];
        IReadOnlyList<Cell>[] rows = [[new("W1"), new("Leaf"), new("clay brickwork of the outer leaf"), new("102.5")]];
        var fitted = ColumnWidths.Fitted(TextSizes.Usual, columns, rows);
        Assert.Equal(110, fitted.Sum(column => column.Width), 6);
        Assert.True(Table.HeightOf(TextSizes.Usual, "", fitted, rows) < Table.HeightOf(TextSizes.Usual, "", columns, rows));
        Assert.All(fitted.Zip(rows[0]), pair => Assert.Single(Table.Lines(TextSizes.Usual, pair.Second, pair.First)));
    }
}
