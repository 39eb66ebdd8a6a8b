using RackController.Control;
using RackController.Model;
using Serilog;

namespace RackController.Service;

/// <summary>Joins the parts that a person sees: the status board, the request queue, the controller's own alarms, and the record.</summary>
internal sealed class RunningRack(
    Site site, StatusBoard board, EventFeed feed, RequestQueue requests, ControllerAlarms alarms, IScanClock clock, RackWorker worker,
    Journal journal, ILogger log) : IServedRack
{
    public Site Site => site;

    public Task<SiteStatus> LookAsync(CancellationToken cancellation) => board.Ask().WaitAsync(cancellation);

    public IAsyncEnumerable<ControlEvent> FollowAsync(CancellationToken cancellation) => feed.FollowAsync(cancellation);

    public IReadOnlyList<Sample> UnwrittenSamples() => journal.Unwritten;

    public bool TryAsk(OperatorRequest request)
    {
        if (request is Acknowledge acknowledge && alarms.TryAcknowledge(acknowledge.Alarm))
        {
            return true;
        }

        var taken = requests.TryAdd(request);
        clock.Wake();
        return taken;
    }

    public void Record(string what, string because) => worker.Tell(what, because);

    public void StartAgain(string because) => worker.StartAgain(because);

    public void Complain(string what, Exception why) => log.Error(why, "{What:l}", what);
}
