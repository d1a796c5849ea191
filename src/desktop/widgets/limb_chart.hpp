/// Paints the circumference of a limb over time; every figure comes from desk::draw_limb.
#pragma once

#include <optional>

#include <wx/window.h>

#include "desk/limb_chart.hpp"

class wxGraphicsContext;

namespace sparewell::desktop {

struct StripColours;

class LimbChart : public wxWindow {
 public:
  explicit LimbChart(wxWindow* parent);

  /// Empty: nothing is measured, and a line says so.
  void show(std::optional<desk::LimbCurve> curve);

 private:
  [[nodiscard]] desk::LimbMeasures measures() const;
  void lay_out();
  void paint();
  void paint_sizes(wxGraphicsContext& graphics, const StripColours& colours) const;
  void paint_axes(wxGraphicsContext& graphics, const StripColours& colours) const;
  void paint_trend(wxGraphicsContext& graphics, const StripColours& colours) const;
  void paint_dots(wxGraphicsContext& graphics, const StripColours& colours) const;
  void paint_key(wxGraphicsContext& graphics, const StripColours& colours) const;

  std::optional<desk::LimbCurve> curve_;
  desk::LimbDrawing drawing_;
};

}  // namespace sparewell::desktop
