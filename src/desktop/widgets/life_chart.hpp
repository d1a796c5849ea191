/// Paints the lives of a patient's parts; every figure comes from desk::draw_lives.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include <wx/scrolwin.h>

#include "desk/life_strip.hpp"

class wxGraphicsContext;

namespace sparewell::desktop {

class LifeChart : public wxScrolled<wxWindow> {
 public:
  explicit LifeChart(wxWindow* parent);

  void show(std::vector<desk::StripEntry> entries, Date today);
  /// Marks the strip of this id; does not call when_selected.
  void mark(const std::string& id);
  void when_selected(std::function<void(const std::string&)> call) {
    selected_call_ = std::move(call);
  }

 private:
  [[nodiscard]] desk::StripMeasures measures() const;
  void lay_out();
  void paint();
  void paint_axis(wxGraphicsContext& graphics) const;
  void paint_row(wxGraphicsContext& graphics, const desk::StripShape& row) const;
  void on_click(const wxPoint& at);
  void on_move(const wxPoint& at);
  void step(int by);
  [[nodiscard]] std::optional<std::size_t> entry_at(const wxPoint& at) const;
  void say_marked();

  std::vector<desk::StripEntry> entries_;
  Date today_;
  desk::LifeDrawing drawing_;
  std::string marked_;
  std::function<void(const std::string&)> selected_call_;
};

/// The key to the drawing: a small window of one line.
class LifeLegend : public wxWindow {
 public:
  explicit LifeLegend(wxWindow* parent);

 private:
  void paint();
};

}  // namespace sparewell::desktop
