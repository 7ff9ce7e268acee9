using System.Text;
using DetailGen.Dxf.Reading;

namespace DetailGen.Dxf.Tests.Reading;

/// <summary>Blocks that hold themselves: whoever unfolds them never ends.</summary>
public class BlockGraphTests
{
    [Fact]
    public void A_block_that_inserts_itself_is_refused_with_its_line()
    {
        var fault = Assert.Throws<DxfReadException>(() => Read(("A", ["B"]), ("B", ["b"])));
        Assert.Equal("The block B inserts itself.", fault.Message);
        Assert.Equal(17, fault.Line);
    }

    [Fact]
    public void So_is_one_that_comes_back_by_way_of_others() => Assert.Equal(
        "The block A inserts itself by way of B, C.", Assert.Throws<DxfReadException>(() => Read(("A", ["B"]), ("B", ["D", "C"]), ("C", ["A", "D"]), ("D", []))).Message);

    [Fact]
    public void The_picture_of_a_dimension_counts_as_an_insert() => Assert.Equal(
        "The block *D1 inserts itself by way of A.", Assert.Throws<DxfReadException>(() => Read("DIMENSION", ("*D1", ["A"]), ("A", ["*D1"]))).Message);

    [Fact]
    public void A_block_inserted_by_many_and_one_that_is_not_there_are_no_ring() =>
        Assert.NotEmpty(Read(("A", ["B", "C", "none"]), ("B", ["C"]), ("C", [])).Entities);

    [Fact]
    public void A_chain_of_fifty_thousand_blocks_is_walked() =>
        Assert.Equal(50_000, Read([.. Enumerable.Range(0, 50_000).Select(i => ($"b{i}", (string[])[$"b{i + 1}"]))]).Entities.Count);

    [Fact]
    public void A_ring_at_the_end_of_a_long_chain_is_found() => Assert.Equal(
        "The block b49999 inserts itself.",
        Assert.Throws<DxfReadException>(() => Read([.. Enumerable.Range(0, 50_000).Select(i => ($"b{i}", (string[])[$"b{Math.Min(i + 1, 49_999)}"]))])).Message);

    private static DxfDrawing Read(params (string Name, string[] Held)[] blocks) => Read("INSERT", blocks);

    private static DxfDrawing Read(string kind, params (string Name, string[] Held)[] blocks)
    {
        var text = new StringBuilder("0\nSECTION\n2\nBLOCKS\n");
        foreach (var (name, held) in blocks)
        {
            text.Append("0\nBLOCK\n2\n").Append(name).Append('\n');
            foreach (var inner in held)
            {
                text.Append("0\n").Append(kind).Append("\n8\n0\n2\n").Append(inner).Append('\n');
            }

            text.Append("0\nENDBLK\n");
        }

        return DxfDrawing.Read(new MemoryStream(Encoding.ASCII.GetBytes(text.Append("0\nENDSEC\n0\nEOF\n").ToString())));
    }
}
