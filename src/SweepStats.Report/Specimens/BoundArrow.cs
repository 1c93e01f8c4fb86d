using OxyPlot;

namespace SweepStats.Report.Specimens;

/// <summary>
/// Draws one arrow that stands on a lower bound. Heads and feet differ between specimens, for colour alone is lost on a grey
/// print.
/// </summary>
/// <param name="Colour">Colour.</param>
/// <param name="Style">Which of the eight kinds: four heads, each with a single or a double foot.</param>
internal readonly record struct BoundArrow(OxyColor Colour, int Style)
{
    private const double Half = 4;
    private const double HeadLength = 5;
    private const double Width = 1.3;
    private const int Heads = 4;

    /// <summary>Draws it upwards from its foot, so many pixels long.</summary>
    public void Draw(IRenderContext rc, ScreenPoint foot, double length)
    {
        var tip = new ScreenPoint(foot.X, foot.Y - length);
        Line(rc, new(foot.X - Half, foot.Y), new(foot.X + Half, foot.Y));
        if (Style / Heads % 2 == 1)
        {
            Line(rc, new(foot.X - Half, foot.Y - 3), new(foot.X + Half, foot.Y - 3));
        }

        Line(rc, foot, tip);
        Head(rc, tip);
    }

    private void Head(IRenderContext rc, ScreenPoint tip)
    {
        ScreenPoint[] head = [new(tip.X - Half, tip.Y + HeadLength), tip, new(tip.X + Half, tip.Y + HeadLength)];
        switch (Style % Heads)
        {
            case 0:
                Line(rc, head);
                break;
            case 1:
                rc.DrawPolygon(head, Colour, Colour, 1, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
                break;
            case 2:
                rc.DrawPolygon(head, OxyColors.White, Colour, Width, EdgeRenderingMode.PreferGeometricAccuracy, null,
                    LineJoin.Miter);
                break;
            default:
                Line(rc, head);
                Line(rc, [.. head.Select(p => new ScreenPoint(p.X, p.Y + 4))]);
                break;
        }
    }

    private void Line(IRenderContext rc, params IList<ScreenPoint> points) =>
        rc.DrawLine(points, Colour, Width, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Round);
}
