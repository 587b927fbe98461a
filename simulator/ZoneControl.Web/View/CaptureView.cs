namespace ZoneControl.Web.View;

/// <summary>What a report on a capture says beyond that on a run.</summary>
/// <param name="Word">The verdict in a word or two.</param>
/// <param name="Leading">The verdict's leading sentence.</param>
/// <param name="Grounds">What it rests on.</param>
/// <param name="Facts">What was read: name and value.</param>
/// <param name="NotJudged">Why rules were not judged, each reason with the rules that it keeps from being judged.</param>
/// <param name="Estimate">What the water's numbers are worth.</param>
public sealed record CaptureView(
    string Word,
    string Leading,
    string Grounds,
    IReadOnlyList<(string Name, string Value)> Facts,
    IReadOnlyList<(string Why, string Rules)> NotJudged,
    string Estimate);
