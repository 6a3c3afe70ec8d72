using System;
using System.IO;
using System.Net;
using System.Net.Sockets;
using System.Runtime.InteropServices;
using System.Threading.Tasks;
using Microsoft.Win32.SafeHandles;
using StarterCtl.Firmware.Tests.Link;
using Xunit;

namespace StarterCtl.Link.Tests;

/// <summary>The lines that a desk opens, with the firmware's link at their other end.</summary>
public sealed partial class BoardLineTests
{
    private const int ReadWriteWithoutTerminal = 0x102;

    [Fact]
    public async Task OpenTcp_ABoardBehindAPort_Answers()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        Task<Stream> opening = BoardLine.OpenTcpAsync("127.0.0.1", ((IPEndPoint)listener.LocalEndpoint).Port, TestContext.Current.CancellationToken);
        using TcpClient accepted = await listener.AcceptTcpClientAsync(TestContext.Current.CancellationToken);
        Task serving = ServeAsync(accepted.GetStream());

        await using (BoardClient client = await BoardClient.ConnectAsync(await opening, Patient, TestContext.Current.CancellationToken))
        {
            await client.UploadAsync(Firmware.Tests.FakeBoard.Chk01(), 5, TestContext.Current.CancellationToken);
            Assert.Equal(5, (await client.GreetAsync(TestContext.Current.CancellationToken)).CaseHash);
        }

        await serving;
    }

    [Fact]
    public async Task OpenTcp_NobodyListens_NamesHostAndPort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        int port = ((IPEndPoint)listener.LocalEndpoint).Port;
        listener.Stop();

        LinkException refused = await Assert.ThrowsAsync<LinkException>(() => BoardLine.OpenTcpAsync("127.0.0.1", port, TestContext.Current.CancellationToken));

        Assert.StartsWith($"127.0.0.1, port {port}: ", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task OpenSerial_PseudoTerminal_Answers()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "pseudo terminals are opened as Linux has them");
        int handle = OpenTerminal(ReadWriteWithoutTerminal);
        byte[] name = new byte[64];
        Assert.Equal((0, 0, 0), (Grant(handle), Unlock(handle), Name(handle, name, name.Length)));
        await using FileStream board = new(new SafeFileHandle(handle, ownsHandle: true), FileAccess.ReadWrite, 0, isAsync: false);
        Stream line = BoardLine.OpenSerial(System.Text.Encoding.ASCII.GetString(name).TrimEnd('\0'), 115_200);
        Task serving = Task.Run(() => ServeAsync(board), TestContext.Current.CancellationToken);

        await using (BoardClient client = await BoardClient.ConnectAsync(line, Patient, TestContext.Current.CancellationToken))
        {
            Assert.Equal("bench board 1", client.Greeting.BoardName);
            await client.PingAsync(TestContext.Current.CancellationToken);
        }

        await serving;
    }

    [Fact]
    public void OpenSerial_NoSuchPort_NamesIt()
    {
        LinkException refused = Assert.Throws<LinkException>(() => BoardLine.OpenSerial("/dev/no-such-port", 115_200));

        Assert.StartsWith("serial port /dev/no-such-port at 115200 baud: ", refused.Message, StringComparison.Ordinal);
    }

    // A busy machine may be slow to let the board's thread run; nothing waits for this long otherwise.
    private static LinkTiming Patient => new() { Answer = TimeSpan.FromSeconds(2), Tries = 10 };

    // A board that runs some control periods for every piece of request, until the desk is gone.
    private static async Task ServeAsync(Stream stream)
    {
        LinkRig rig = new();
        MemoryStream answer = new();
        rig.Wire = answer.WriteByte;
        byte[] received = new byte[256];
        try
        {
            int count;
            while ((count = await stream.ReadAsync(received)) > 0)
            {
                rig.Put(received, count);
                rig.Step(30);
                await stream.WriteAsync(answer.ToArray());
                answer.SetLength(0);
            }
        }
        catch (IOException)
        {
            // A pseudo terminal says so when its other end is closed.
        }
    }

    [LibraryImport("libc", EntryPoint = "posix_openpt")]
    private static partial int OpenTerminal(int flags);

    [LibraryImport("libc", EntryPoint = "grantpt")]
    private static partial int Grant(int handle);

    [LibraryImport("libc", EntryPoint = "unlockpt")]
    private static partial int Unlock(int handle);

    [LibraryImport("libc", EntryPoint = "ptsname_r")]
    private static partial int Name(int handle, [Out] byte[] name, nint length);
}
