#include "exchange/documents/pdf_pages.hpp"

#include <algorithm>

#include <cairo-pdf.h>
#include <fmt/format.h>
#include <pango/pangocairo.h>

namespace sparewell::exchange {
namespace {

constexpr double margin = 50;
constexpr double foot_height = 24;
constexpr double gap = 6;  // between cells

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

double height_of(const Layout& layout) {
  int width = 0;
  int height = 0;
  pango_layout_get_size(layout.get(), &width, &height);
  return static_cast<double>(height) / PANGO_SCALE;
}

}  // namespace

struct PdfPages::Drawing {
  Drawing(const std::string& path, PaperSize paper, std::string words, int count)
      : size{points(paper)}, foot{std::move(words)}, pages{count} {
    surface =
        cairo_pdf_surface_create(path.empty() ? nullptr : path.c_str(), size.width, size.height);
    context = cairo_create(surface);
  }
  ~Drawing() {
    cairo_destroy(context);
    cairo_surface_destroy(surface);
  }
  Drawing(const Drawing&) = delete;
  Drawing& operator=(const Drawing&) = delete;

  [[nodiscard]] double width() const { return size.width - 2 * margin; }
  [[nodiscard]] double bottom() const { return size.height - margin - foot_height; }

  [[nodiscard]] Layout layout(const std::string& text, double points_high, bool bold,
                              double wide) const {
    Layout made{pango_cairo_create_layout(context)};
    auto* font = pango_font_description_from_string("DejaVu Sans, Sans");
    pango_font_description_set_absolute_size(font, points_high * PANGO_SCALE);
    if (bold) pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
    pango_layout_set_font_description(made.get(), font);
    pango_font_description_free(font);
    pango_layout_set_width(made.get(), static_cast<int>(wide * PANGO_SCALE));
    pango_layout_set_wrap(made.get(), PANGO_WRAP_WORD_CHAR);
    pango_layout_set_text(made.get(), text.data(), static_cast<int>(text.size()));
    return made;
  }

  void show(const Layout& text, double x, double at) const {
    cairo_move_to(context, x, at);
    pango_cairo_show_layout(context, text.get());
  }

  void rule(double from, double to, double at) const {
    cairo_set_line_width(context, 0.5);
    cairo_move_to(context, from, at);
    cairo_line_to(context, to, at);
    cairo_stroke(context);
  }

  void end_page() {
    const auto words =
        fmt::format("{}Page {} of {}", foot.empty() ? "" : foot + "   ", page, pages);
    show(layout(words, 8, false, width()), margin, size.height - margin - 10);
    cairo_show_page(context);
  }

  PaperPoints size;
  std::string foot;
  int pages = 1;
  int page = 1;
  double y = margin;
  cairo_surface_t* surface = nullptr;
  cairo_t* context = nullptr;
};

PdfPages::PdfPages(const std::string& path, PaperSize paper, std::string foot, int pages)
    : drawing_{std::make_unique<Drawing>(path, paper, std::move(foot), pages)} {}

PdfPages::~PdfPages() = default;

void PdfPages::need(double height) {
  auto& d = *drawing_;
  if (d.y + height <= d.bottom() || d.y <= margin) return;
  d.end_page();
  ++d.page;
  d.y = margin;
}

void PdfPages::paragraph(const std::string& text, double size, bool bold, double space) {
  auto& d = *drawing_;
  const auto made = d.layout(text, size, bold, d.width());
  const double height = height_of(made);
  need(height + space);
  d.y += space;
  d.show(made, margin, d.y);
  d.y += height;
}

void PdfPages::row(const std::vector<std::string>& cells, const std::vector<double>& shares,
                   double size, bool bold) {
  auto& d = *drawing_;
  std::vector<Layout> made;
  double height = 0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    made.push_back(d.layout(cells[i], size, bold, shares[i] * d.width() - gap));
    height = std::max(height, height_of(made.back()));
  }
  need(height + 2 * gap);
  double x = margin;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    d.show(made[i], x, d.y + gap / 2);
    x += shares[i] * d.width();
  }
  d.y += height + gap;
  d.rule(margin, margin + d.width(), d.y);
}

void PdfPages::signature(const std::vector<std::string>& names) {
  auto& d = *drawing_;
  const double wide = d.width() / static_cast<double>(names.size());
  need(70);
  d.y += 44;
  double x = margin;
  for (const auto& name : names) {
    d.rule(x, x + wide - 20, d.y);
    d.show(d.layout(name, 8, false, wide - 20), x, d.y + 3);
    x += wide;
  }
  d.y += 20;
}

int PdfPages::page() const {
  return drawing_->page;
}

bool PdfPages::finish() {
  auto& d = *drawing_;
  d.end_page();
  cairo_surface_finish(d.surface);
  return cairo_status(d.context) == CAIRO_STATUS_SUCCESS &&
         cairo_surface_status(d.surface) == CAIRO_STATUS_SUCCESS;
}

}  // namespace sparewell::exchange
