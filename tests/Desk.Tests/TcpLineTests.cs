using System.Collections.Generic;
using System.Net;
using System.Net.Sockets;
using System.Threading.Tasks;
using Xunit;

namespace StarterCtl.Desk.Tests;

/// <summary>A board's line behind a port: one desk after the other.</summary>
public sealed class TcpLineTests
{
    [Fact]
    public async Task Desk_BehindOneThatHungUpUnheard_IsHeardNext()
    {
        using TcpLine line = new(new IPEndPoint(IPAddress.Loopback, 0));
        using TcpClient first = await Connect(line);
        await first.GetStream().WriteAsync(new byte[] { 1, 2, 3 }, TestContext.Current.CancellationToken);
        List<byte> heard = await Hear(line, 1);
        first.Close();

        using TcpClient second = await Connect(line);
        await second.GetStream().WriteAsync(new byte[] { 4 }, TestContext.Current.CancellationToken);
        heard.AddRange(await Hear(line, 3));

        Assert.Equal([1, 2, 3, 4], heard);
    }

    [Fact]
    public async Task Desk_BesideAnother_IsTurnedAway()
    {
        using TcpLine line = new(new IPEndPoint(IPAddress.Loopback, 0));
        using TcpClient first = await Connect(line);
        await first.GetStream().WriteAsync(new byte[] { 1 }, TestContext.Current.CancellationToken);
        await Hear(line, 1);

        using TcpClient second = await Connect(line);
        line.Read(new byte[1], 1);

        Assert.Equal(0, await second.GetStream().ReadAsync(new byte[1], TestContext.Current.CancellationToken));
        await first.GetStream().WriteAsync(new byte[] { 2 }, TestContext.Current.CancellationToken);
        Assert.Equal([2], await Hear(line, 1));
    }

    private static async Task<TcpClient> Connect(TcpLine line)
    {
        TcpClient desk = new();
        await desk.ConnectAsync(line.Place, TestContext.Current.CancellationToken);
        return desk;
    }

    // Byte by byte, as a board that has room for no more.
    private static async Task<List<byte>> Hear(TcpLine line, int count)
    {
        List<byte> heard = [];
        byte[] next = new byte[1];
        for (int i = 0; i < 1000 && heard.Count < count; i++)
        {
            if (line.Read(next, 1) == 1) heard.Add(next[0]);
            else await Task.Delay(1, TestContext.Current.CancellationToken);
        }

        return heard;
    }
}
