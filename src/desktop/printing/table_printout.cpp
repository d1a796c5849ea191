#include "desktop/printing/table_printout.hpp"

#include <wx/dc.h>

#include "desktop/text.hpp"
#include "desktop/widgets/text_size.hpp"

namespace sparewell::desktop {
namespace {

using desk::PrintFont;

/// Sizes of text, in points: smaller ones only where words would be broken otherwise.
constexpr double sizes[] = {9, 8, 7, 6.5};

}  // namespace

wxFont TablePrintout::font_of(PrintFont font) const {
  // Paper does not follow the size of text on the screen.
  const double points = (font == PrintFont::title ? points_ + 5 : points_) / text_scale();
  auto info = wxFontInfo{points}.Family(wxFONTFAMILY_SWISS);
  return wxFont{font == PrintFont::text ? info : info.Bold()};
}

TablePrintout::TablePrintout(desk::Printable printable, const wxPageSetupDialogData& setup)
    : wxPrintout{to_wx(printable.title)}, printable_{std::move(printable)}, setup_{setup} {}

wxRect TablePrintout::map_page() {
  MapScreenSizeToPageMargins(setup_);
  return GetLogicalPageMarginsRect(setup_);
}

desk::PaperSize TablePrintout::paper_of(const wxRect& room, double points) {
  points_ = points;
  auto& dc = *GetDC();
  desk::PaperSize paper;
  paper.width = room.width;
  paper.height = room.height;
  dc.SetFont(font_of(PrintFont::text));
  paper.line = 1.15 * dc.GetCharHeight();
  paper.gap = dc.GetTextExtent("nn").x;
  paper.text_width = [this, &dc](const std::string& text, PrintFont font) {
    dc.SetFont(font_of(font));
    return static_cast<double>(dc.GetTextExtent(to_wx(text)).x);
  };
  return paper;
}

void TablePrintout::OnPreparePrinting() {
  const auto room = map_page();
  auto paper = paper_of(room, sizes[0]);
  for (const double points : sizes) {
    paper = paper_of(room, points);
    if (desk::words_fit(printable_, paper)) break;
  }
  pages_ = desk::lay_out(printable_, paper);
}

void TablePrintout::GetPageInfo(int* first, int* last, int* from, int* to) {
  *first = *from = 1;
  *last = *to = static_cast<int>(pages_.size());
}

bool TablePrintout::HasPage(int page) {
  return page >= 1 && page <= static_cast<int>(pages_.size());
}

bool TablePrintout::OnPrintPage(int page) {
  if (!HasPage(page)) return false;
  const auto room = map_page();
  auto& dc = *GetDC();
  dc.SetTextForeground(*wxBLACK);
  dc.SetPen(wxPen{*wxBLACK, 1});
  const auto& content = pages_[static_cast<std::size_t>(page - 1)];
  for (const auto& text : content.texts) {
    dc.SetFont(font_of(text.font));
    const auto words = to_wx(text.text);
    const int before = text.align == desk::Align::right ? dc.GetTextExtent(words).x : 0;
    dc.DrawText(words, room.x + static_cast<int>(text.x) - before,
                room.y + static_cast<int>(text.y));
  }
  for (const auto& rule : content.rules) {
    const int y = room.y + static_cast<int>(rule.y);
    dc.DrawLine(room.x + static_cast<int>(rule.from), y, room.x + static_cast<int>(rule.to), y);
  }
  return true;
}

}  // namespace sparewell::desktop
