#include "exchange/documents/pictograms.hpp"

#include <iterator>

#include "exchange/documents/drawings.hpp"

namespace sparewell::exchange {
namespace {

void draw(const Pen& pen, Pictogram which) {
  using namespace drawings;
  using Draw = void (*)(const Pen&);
  static constexpr Draw drawings[] = {nullptr,
                                      liner,
                                      liner_with_pin,
                                      liner_with_seal,
                                      sleeve,
                                      lock,
                                      pin,
                                      valve,
                                      pump,
                                      sock,
                                      wash,
                                      dry,
                                      no_heat,
                                      no_chemicals,
                                      look,
                                      take_off,
                                      crutches,
                                      warning,
                                      reacts,
                                      suitcase,
                                      telephone,
                                      clinic,
                                      calendar,
                                      tool,
                                      question};
  static_assert(std::size(drawings) == static_cast<std::size_t>(Pictogram::question) + 1);
  drawings[static_cast<std::size_t>(which)](pen);
}

}  // namespace

void draw_pictogram(_cairo* context, Pictogram which, double x, double y, double side) {
  if (which == Pictogram::none) return;
  cairo_save(context);
  cairo_translate(context, x, y);
  cairo_scale(context, side / 100, side / 100);
  cairo_set_line_cap(context, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join(context, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width(context, usual_width);
  draw(Pen{context}, which);
  cairo_restore(context);
}

}  // namespace sparewell::exchange
