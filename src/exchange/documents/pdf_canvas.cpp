#include "exchange/documents/pdf_canvas.hpp"

#include <numbers>

#include <cairo-pdf.h>
#include <pango/pangocairo.h>

namespace sparewell::exchange {
namespace {

struct PaperPoints {
  double width;
  double height;
};

PaperPoints points(PaperSize paper) {
  // ISO 216 A4 is 210 mm by 297 mm; US Letter is 8.5 by 11 inches.
  if (paper == PaperSize::letter) return {612, 792};
  return {210 / 25.4 * 72, 297 / 25.4 * 72};
}

struct FreeLayout {
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
};
using Layout = std::unique_ptr<PangoLayout, FreeLayout>;

Layout layout_of(cairo_t* context, const std::string& text, Font wished, double wide,
                 int most_lines) {
  Layout made{pango_cairo_create_layout(context)};
  auto* font = pango_font_description_from_string("DejaVu Sans, Sans");
  pango_font_description_set_absolute_size(font, wished.size * PANGO_SCALE);
  if (wished.bold) pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description(made.get(), font);
  pango_font_description_free(font);
  pango_layout_set_width(made.get(), static_cast<int>(wide * PANGO_SCALE));
  pango_layout_set_wrap(made.get(), PANGO_WRAP_WORD_CHAR);
  if (most_lines > 0) {
    pango_layout_set_height(made.get(), -most_lines);
    pango_layout_set_ellipsize(made.get(), PANGO_ELLIPSIZE_END);
  }
  pango_layout_set_text(made.get(), text.data(), static_cast<int>(text.size()));
  return made;
}

double height_of(const Layout& layout) {
  int width = 0;
  int height = 0;
  pango_layout_get_size(layout.get(), &width, &height);
  return static_cast<double>(height) / PANGO_SCALE;
}

}  // namespace

struct PdfCanvas::Surface {
  Surface(const std::string& path, PaperSize paper)
      : width{points(paper).width}, height{points(paper).height} {
    surface = cairo_pdf_surface_create(path.empty() ? nullptr : path.c_str(), width, height);
    context = cairo_create(surface);
  }
  ~Surface() {
    cairo_destroy(context);
    cairo_surface_destroy(surface);
  }
  Surface(const Surface&) = delete;
  Surface& operator=(const Surface&) = delete;

  double width;  ///< in points
  double height;
  cairo_surface_t* surface = nullptr;
  cairo_t* context = nullptr;
};

PdfCanvas::PdfCanvas(const std::string& path, PaperSize paper)
    : surface_{std::make_unique<Surface>(path, paper)} {}

PdfCanvas::~PdfCanvas() = default;

double PdfCanvas::width() const {
  return surface_->width;
}

double PdfCanvas::height() const {
  return surface_->height;
}

double PdfCanvas::text_height(const std::string& text, Font font, double wide,
                              int most_lines) const {
  return height_of(layout_of(surface_->context, text, font, wide, most_lines));
}

double PdfCanvas::write(const std::string& text, Font font, double x, double y, double wide,
                        int most_lines) {
  const auto made = layout_of(surface_->context, text, font, wide, most_lines);
  cairo_move_to(surface_->context, x, y);
  pango_cairo_show_layout(surface_->context, made.get());
  return height_of(made);
}

void PdfCanvas::rule(double from, double to, double y, double thick) {
  cairo_t* context = surface_->context;
  cairo_set_line_width(context, thick);
  cairo_move_to(context, from, y);
  cairo_line_to(context, to, y);
  cairo_stroke(context);
}

void PdfCanvas::frame(double x, double y, double wide, double high, double thick) {
  constexpr double round = 6;
  constexpr double quarter = std::numbers::pi / 2;
  cairo_t* context = surface_->context;
  cairo_set_line_width(context, thick);
  cairo_new_sub_path(context);
  cairo_arc(context, x + wide - round, y + round, round, -quarter, 0);
  cairo_arc(context, x + wide - round, y + high - round, round, 0, quarter);
  cairo_arc(context, x + round, y + high - round, round, quarter, 2 * quarter);
  cairo_arc(context, x + round, y + round, round, 2 * quarter, 3 * quarter);
  cairo_close_path(context);
  cairo_stroke(context);
}

void PdfCanvas::picture(Pictogram which, double x, double y, double side) {
  draw_pictogram(surface_->context, which, x, y, side);
}

void PdfCanvas::shrink(double factor, double x, double y) {
  cairo_translate(surface_->context, x, y);
  cairo_scale(surface_->context, factor, factor);
  cairo_translate(surface_->context, -x, -y);
}

void PdfCanvas::next_page() {
  cairo_identity_matrix(surface_->context);
  cairo_show_page(surface_->context);
}

bool PdfCanvas::finish() {
  cairo_surface_finish(surface_->surface);
  return cairo_status(surface_->context) == CAIRO_STATUS_SUCCESS &&
         cairo_surface_status(surface_->surface) == CAIRO_STATUS_SUCCESS;
}

}  // namespace sparewell::exchange
