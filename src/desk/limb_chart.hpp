/// The circumference of a limb over time, drawn as plain numbers.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"
#include "desk/limb_forecast.hpp"
#include "desk/play_chart.hpp"

namespace sparewell::desk {

/// A range of sizes as it is drawn behind the circumferences.
struct SizeBand {
  std::string label;  ///< "LG-24"
  std::optional<double> min_cm;
  std::optional<double> max_cm;
};

/// One height of one side.
struct LimbCurve {
  std::string name;   ///< "Left, 4 cm above the end"
  std::string words;  ///< the same in sentences, for screen readers
  std::vector<care::LimbReading> dots;
  std::vector<std::string> dot_words;  ///< for tooltips, in the order of dots
  /// From the first reading of the trend to `until`; the middle and the central interval with
  /// chance 0.8.
  std::vector<std::pair<Date, care::LimbPrediction>> trend;
  std::vector<SizeBand> sizes;  ///< of the items worn there
  Date today;
  Date until;
};

/// Every height at which a side was measured, or at which a worn item's size is stated and can be
/// read; the left side first, those with a worn size before the others. Empty without measurements.
[[nodiscard]] std::vector<LimbCurve> limb_curves(const Clinic& clinic, const PatientRef& patient,
                                                 Date today, Date until);

/// Room on the left for the labels of circumferences, below for those of months.
using LimbMeasures = PlayMeasures;

struct LimbPoint {
  double x = 0;
  double y = 0;
};

/// A size's range; an end that is not stated reaches the edge of the plot and is not drawn.
struct DrawnSize {
  std::string label;
  double top = 0;
  double bottom = 0;
  bool has_top = false;
  bool has_bottom = false;
  double label_bottom = 0;  ///< at the bottom of the range, above labels that lie there already
};

struct LimbDrawing {
  Panel across;
  double top = 0;
  double bottom = 0;
  std::vector<Tick> month_ticks;
  std::vector<Tick> cm_ticks;  ///< their x is a height from the top of the drawing
  std::vector<DrawnSize> sizes;
  std::vector<LimbPoint> dots;  ///< in the order of LimbCurve::dots
  std::vector<LimbPoint> middle;
  std::vector<LimbPoint> low;   ///< as many as `middle`
  std::vector<LimbPoint> high;  ///< as many as `middle`
  double today = 0;             ///< x of the line that marks today

  /// The dot within `reach` of a place that is nearest to it.
  [[nodiscard]] std::optional<std::size_t> dot_at(double x, double y, double reach) const;
};

/// Days across from the first reading to `until`, centimetres upwards around all that is drawn.
[[nodiscard]] LimbDrawing draw_limb(const LimbCurve& curve, const LimbMeasures& measures);

}  // namespace sparewell::desk
