using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>Joins the parts that a person sees: the status board, the request queue, and the controller's own alarms.</summary>
internal sealed class RunningRack(
    Site site, StatusBoard board, RequestQueue requests, ControllerAlarms alarms, IScanClock clock) : IRunningRack
{
    public Site Site => site;

    public Task<SiteStatus> LookAsync(CancellationToken cancellation) => board.Ask().WaitAsync(cancellation);

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
}
