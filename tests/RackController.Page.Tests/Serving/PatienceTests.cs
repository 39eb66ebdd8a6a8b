using Microsoft.AspNetCore.Http;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page.Tests;

public sealed class PatienceTests
{
    [Fact]
    public async Task WhoAsksWhileAScanHangsIsToldSoAndWhatToDo()
    {
        var rack = new HangingRack();
        var context = new DefaultHttpContext { Response = { Body = new MemoryStream() } };

        await new Faults(rack).AnswerForAsync(context, async asked => await rack.LookAsync(asked, TimeSpan.FromMilliseconds(20)));

        context.Response.Body.Position = 0;
        using var reader = new StreamReader(context.Response.Body);
        Assert.Equal(StatusCodes.Status503ServiceUnavailable, context.Response.StatusCode);
        Assert.Contains("has not looked at its racks", await reader.ReadToEndAsync(), StringComparison.Ordinal);
        Assert.Empty(rack.Complaints);
    }

    /// <summary>A rack that no scan looks at.</summary>
    private sealed class HangingRack : IServedRack
    {
        public List<string> Complaints { get; } = [];

        public Site Site => throw new NotSupportedException();

        public Task<SiteStatus> LookAsync(CancellationToken cancellation) =>
            new TaskCompletionSource<SiteStatus>().Task.WaitAsync(cancellation);

        public bool TryAsk(OperatorRequest request) => throw new NotSupportedException();

        public IAsyncEnumerable<ControlEvent> FollowAsync(CancellationToken cancellation) => throw new NotSupportedException();

        public IReadOnlyList<Sample> UnwrittenSamples() => throw new NotSupportedException();

        public void Record(string what, string because) => throw new NotSupportedException();

        public void StartAgain(string because) => throw new NotSupportedException();

        public void Complain(string what, Exception why) => Complaints.Add(what);
    }
}
