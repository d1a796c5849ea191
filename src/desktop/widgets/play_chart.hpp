/// Paints money in stock against the share of pieces on hand; every figure comes from
/// desk::draw_play.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include <wx/window.h>

#include "desk/play_chart.hpp"

class wxGraphicsContext;

namespace sparewell::desktop {

struct StripColours;

class PlayChart : public wxWindow {
 public:
  explicit PlayChart(wxWindow* parent);

  /// `title` stands below the axis of money.
  void show(std::vector<desk::PlayCurve> curves, const std::string& title);
  /// Marks the point of this id; does not call when_selected.
  void mark(const std::string& id);
  void when_selected(std::function<void(const std::string&)> call) {
    selected_call_ = std::move(call);
  }

 private:
  [[nodiscard]] desk::PlayMeasures measures() const;
  void lay_out();
  void paint();
  void paint_axes(wxGraphicsContext& graphics, const StripColours& colours) const;
  void paint_curves(wxGraphicsContext& graphics, const StripColours& colours) const;
  void paint_points(wxGraphicsContext& graphics, const StripColours& colours) const;
  void paint_key(wxGraphicsContext& graphics, const StripColours& colours) const;
  void on_move(const wxPoint& at);
  void step(int by);
  void choose(std::size_t mark);
  [[nodiscard]] const desk::PlayPoint& point_of(const desk::PlayMark& mark) const;
  [[nodiscard]] std::optional<std::size_t> marked() const;

  std::vector<desk::PlayCurve> curves_;
  desk::PlayDrawing drawing_;
  std::string title_;
  std::string marked_;
  std::function<void(const std::string&)> selected_call_;
};

}  // namespace sparewell::desktop
