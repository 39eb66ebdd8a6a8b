using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>A site that is being driven, as a screen or page sees it: to look at and to ask things of. From any thread.</summary>
public interface IRunningRack
{
    /// <summary>The site.</summary>
    Site Site { get; }

    /// <summary>A picture of the whole, made by the next scan.</summary>
    /// <param name="cancellation">Ends the wait.</param>
    Task<SiteStatus> LookAsync(CancellationToken cancellation);

    /// <summary>Asks something of the controller; an event says what became of it. A stop is always taken.</summary>
    /// <param name="request">What is asked.</param>
    /// <returns>Whether it was taken; not when too many wait already.</returns>
    bool TryAsk(OperatorRequest request);
}
