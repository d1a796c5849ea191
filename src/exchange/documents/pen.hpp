/// What pictograms are drawn with: black lines in a square of 100 by 100.
#pragma once

#include <initializer_list>
#include <numbers>

#include <cairo.h>

namespace sparewell::exchange {

struct Point {
  double x;
  double y;
};

class Pen {
 public:
  explicit Pen(cairo_t* context) : context_{context} {}

  void line(std::initializer_list<Point> points, bool closed = false) const {
    path(points);
    if (closed) cairo_close_path(context_);
    cairo_stroke(context_);
  }
  void filled(std::initializer_list<Point> points) const {
    path(points);
    cairo_close_path(context_);
    cairo_fill(context_);
  }
  void box(double left, double top, double right, double bottom) const {
    line({{left, top}, {right, top}, {right, bottom}, {left, bottom}}, true);
  }
  void circle(Point middle, double radius) const {
    cairo_new_sub_path(context_);
    cairo_arc(context_, middle.x, middle.y, radius, 0, 2 * std::numbers::pi);
    cairo_stroke(context_);
  }
  void dot(Point middle, double radius) const {
    cairo_arc(context_, middle.x, middle.y, radius, 0, 2 * std::numbers::pi);
    cairo_fill(context_);
  }
  /// A flattened ring: the rim of something round.
  void rim(Point middle, double wide, double high) const {
    cairo_save(context_);
    cairo_translate(context_, middle.x, middle.y);
    cairo_scale(context_, wide / 2, high / 2);
    cairo_new_sub_path(context_);
    cairo_arc(context_, 0, 0, 1, 0, 2 * std::numbers::pi);
    cairo_restore(context_);
    cairo_stroke(context_);
  }
  void curve(Point from, Point by, Point towards, Point to) const {
    cairo_move_to(context_, from.x, from.y);
    cairo_curve_to(context_, by.x, by.y, towards.x, towards.y, to.x, to.y);
    cairo_stroke(context_);
  }
  void thick(double width) const { cairo_set_line_width(context_, width); }

 private:
  void path(std::initializer_list<Point> points) const {
    cairo_new_path(context_);
    for (const auto point : points) cairo_line_to(context_, point.x, point.y);
  }
  cairo_t* context_;
};

/// The width of lines.
inline constexpr double usual_width = 5;

}  // namespace sparewell::exchange
