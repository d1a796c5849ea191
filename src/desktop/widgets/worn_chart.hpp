/// Paints what a patient wore and when reactions began; every figure comes from desk::draw_worn.
#pragma once

#include <wx/scrolwin.h>

#include "desk/worn_drawing.hpp"

class wxGraphicsContext;

namespace sparewell::desktop {

class WornChart : public wxScrolled<wxWindow> {
 public:
  WornChart(wxWindow* parent, desk::WornChart chart);

 private:
  [[nodiscard]] desk::StripMeasures measures() const;
  void lay_out();
  void paint();
  void paint_row(wxGraphicsContext& graphics, const desk::WornShape& row) const;
  void paint_mark(wxGraphicsContext& graphics, const desk::ReactionMark& mark) const;
  void on_move(const wxPoint& at);

  desk::WornChart chart_;
  desk::WornDrawing drawing_;
};

}  // namespace sparewell::desktop
