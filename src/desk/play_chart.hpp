/// Money in stock against the share of pieces on hand when asked for, drawn as plain numbers: where
/// each curve, mark and tick lies.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/backtest_chart.hpp"

namespace sparewell::desk {

/// One step of one way of ordering.
struct PlayPoint {
  std::string id;     ///< of its row in the table
  std::string words;  ///< the same figures in a sentence, for tooltips and screen readers
  double stock = 0;   ///< mean money in stock, in whole units of the currency
  double fill_rate = 0;
  std::string label;  ///< set apart, with this beside it; "" for others
};

struct PlayCurve {
  std::string name;
  std::vector<PlayPoint> points;  ///< in rising order of money
};

/// Pixels that the painter measured beforehand.
struct PlayMeasures {
  double width = 0;  ///< of the whole drawing
  double height = 0;
  double left = 0;              ///< room for the labels of shares
  double right = 0;             ///< room beside the plot
  double top = 0;               ///< room above it
  double bottom = 0;            ///< room for the labels of amounts
  double tick_label_width = 0;  ///< of the widest label of an amount
  double line_height = 0;
};

struct PlayMark {
  std::size_t curve = 0;
  std::size_t point = 0;
  double x = 0;
  double y = 0;
};

struct PlayDrawing {
  Panel across;
  double top = 0;
  double bottom = 0;
  std::vector<Tick> stock_ticks;      ///< across, from 0
  std::vector<Tick> fill_rate_ticks;  ///< their x is a height from the top of the drawing
  /// Marks that lie within the plot, curve by curve, each curve from left to right.
  std::vector<PlayMark> marks;

  /// The mark within `reach` of a place that is nearest to it, by position in marks.
  [[nodiscard]] std::optional<std::size_t> mark_at(double x, double y, double reach) const;
};

/// The lowest share that is drawn: below it nobody wants to be.
inline constexpr double lowest_drawn_share = 0.60;

/// Money across from 0 to somewhat above the greatest, shares upwards from a share of tenths below
/// the least to 100 %. Points below lowest_drawn_share are left out.
[[nodiscard]] PlayDrawing draw_play(const std::vector<PlayCurve>& curves,
                                    const PlayMeasures& measures);

}  // namespace sparewell::desk
