#include "desk/printing/page_layout.hpp"

#include <algorithm>
#include <numeric>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/printing/wrap_text.hpp"

namespace sparewell::desk {
namespace {

constexpr double footer_lines = 2;
constexpr int portrait_characters = 100;

/// What columns would take on one line, and what their longest words take.
struct Measured {
  std::vector<double> natural;
  std::vector<double> least;
};

Measured measured(const PrintedTable& table, const PaperSize& paper) {
  const auto count = table.columns.size();
  Measured made{std::vector<double>(count, 0), std::vector<double>(count, 0)};
  const auto take = [&](std::size_t column, const std::string& text, PrintFont font) {
    made.natural[column] = std::max(made.natural[column], paper.text_width(text, font));
    for (const auto& word : words_of(text)) {
      made.least[column] = std::max(made.least[column], paper.text_width(word, font));
    }
  };
  for (std::size_t i = 0; i < count; ++i) take(i, table.columns[i].title, PrintFont::strong);
  for (const auto& row : table.rows) {
    const auto font = row.strong ? PrintFont::strong : PrintFont::text;
    for (std::size_t i = 0; i < count && i < row.cells.size(); ++i) take(i, row.cells[i], font);
  }
  return made;
}

double sum_of(const std::vector<double>& widths) {
  return std::accumulate(widths.begin(), widths.end(), 0.0);
}

double room_of(const PrintedTable& table, const PaperSize& paper) {
  const auto gaps = table.columns.empty() ? 0 : table.columns.size() - 1;
  return std::max(paper.width - paper.gap * static_cast<double>(gaps), 0.0);
}

/// Puts texts below one another and begins a new page where the next does not fit.
class PageWriter {
 public:
  explicit PageWriter(const PaperSize& paper) : paper_{paper} { pages_.emplace_back(); }

  [[nodiscard]] bool fits(double height) const {
    return y_ + height <= paper_.height - footer_lines * paper_.line;
  }
  [[nodiscard]] bool at_top() const { return y_ == 0; }
  void new_page() {
    pages_.emplace_back();
    y_ = 0;
  }
  void skip(double height) {
    if (!at_top()) y_ += height;
  }
  void paragraph(const std::string& text, PrintFont font) {
    const double height = font == PrintFont::title ? 1.6 * paper_.line : paper_.line;
    for (const auto& line : wrapped(text, paper_.width, paper_, font)) {
      if (!fits(height)) new_page();
      pages_.back().texts.push_back({0, y_, line, font, Align::left});
      y_ += height;
    }
  }
  /// `lines` of each cell; the row must fit.
  void row(const std::vector<std::vector<std::string>>& cells, const PrintedTable& table,
           const std::vector<double>& widths, PrintFont font) {
    double x = 0;
    for (std::size_t column = 0; column < cells.size(); ++column) {
      const bool right = table.columns[column].align == Align::right;
      double y = y_;
      for (const auto& line : cells[column]) {
        pages_.back().texts.push_back(
            {right ? x + widths[column] : x, y, line, font, right ? Align::right : Align::left});
        y += paper_.line;
      }
      x += widths[column] + paper_.gap;
    }
    y_ += height_of(cells);
  }
  void rule() {
    pages_.back().rules.push_back({y_, 0, paper_.width});
    y_ += 0.3 * paper_.line;
  }
  [[nodiscard]] double height_of(const std::vector<std::vector<std::string>>& cells) const {
    std::size_t most = 1;
    for (const auto& lines : cells) most = std::max(most, lines.size());
    return static_cast<double>(most) * paper_.line;
  }

  std::vector<PrintedPage> finish(const std::string& about) {
    const double y = paper_.height - paper_.line;
    for (std::size_t i = 0; i < pages_.size(); ++i) {
      pages_[i].rules.push_back({y - 0.3 * paper_.line, 0, paper_.width});
      const auto number = say("Page {} of {}", i + 1, pages_.size());
      const double room =
          paper_.width - paper_.text_width(number, PrintFont::text) - 2 * paper_.gap;
      const auto lines = wrapped(about, room, paper_, PrintFont::text);
      pages_[i].texts.push_back({0, y, lines.front(), PrintFont::text, Align::left});
      pages_[i].texts.push_back({paper_.width, y, number, PrintFont::text, Align::right});
    }
    return std::move(pages_);
  }

 private:
  const PaperSize& paper_;
  std::vector<PrintedPage> pages_;
  double y_ = 0;
};

std::vector<std::vector<std::string>> wrapped_cells(const std::vector<std::string>& cells,
                                                    const std::vector<double>& widths,
                                                    const PaperSize& paper, PrintFont font) {
  std::vector<std::vector<std::string>> lines;
  for (std::size_t i = 0; i < cells.size() && i < widths.size(); ++i) {
    lines.push_back(wrapped(cells[i], widths[i], paper, font));
  }
  return lines;
}

void write_table(PageWriter& writer, const PrintedTable& table, const PaperSize& paper) {
  if (table.rows.empty()) {
    if (!table.title.empty()) writer.paragraph(table.title, PrintFont::strong);
    return writer.paragraph(table.empty_words, PrintFont::text);
  }
  const auto widths = paper_columns(table, paper);
  std::vector<std::string> titles;
  for (const auto& column : table.columns) titles.push_back(column.title);
  const auto headings = wrapped_cells(titles, widths, paper, PrintFont::strong);
  const auto begin = [&](bool again) {
    if (!table.title.empty()) {
      writer.paragraph(again ? say("{} (continued)", table.title) : table.title, PrintFont::strong);
    }
    writer.row(headings, table, widths, PrintFont::strong);
    writer.rule();
  };
  const double head = writer.height_of(headings) + 2.5 * paper.line;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const auto font = table.rows[i].strong ? PrintFont::strong : PrintFont::text;
    const auto cells = wrapped_cells(table.rows[i].cells, widths, paper, font);
    const double height = writer.height_of(cells);
    // No headings at the foot of a page without a row below them.
    if (!writer.fits(height + (i == 0 ? head : 0)) && !writer.at_top()) {
      writer.new_page();
      begin(i > 0);
    } else if (i == 0) {
      begin(false);
    }
    writer.row(cells, table, widths, font);
  }
}

}  // namespace

std::vector<double> paper_columns(const PrintedTable& table, const PaperSize& paper) {
  auto [natural, least] = measured(table, paper);
  const auto count = natural.size();
  const double room = room_of(table, paper);
  const double wanted = sum_of(natural);
  const double needed = sum_of(least);
  if (wanted <= room) return natural;
  // Narrow columns keep their width; the wide ones share what is missing.
  const double factor = needed >= room ? room / needed : 1.0;
  const double spare = needed >= room ? 0.0 : (room - needed) / (wanted - needed);
  for (std::size_t i = 0; i < count; ++i) {
    natural[i] = least[i] * factor + (natural[i] - least[i]) * spare;
  }
  return natural;
}

bool words_fit(const Printable& printable, const PaperSize& paper) {
  return std::ranges::all_of(printable.tables, [&](const PrintedTable& table) {
    return sum_of(measured(table, paper).least) <= room_of(table, paper);
  });
}

std::vector<PrintedPage> lay_out(const Printable& printable, const PaperSize& paper) {
  PageWriter writer{paper};
  writer.paragraph(printable.title, PrintFont::title);
  for (const auto& note : printable.notes) writer.paragraph(note, PrintFont::text);
  for (const auto& table : printable.tables) {
    writer.skip(paper.line);
    write_table(writer, table, paper);
  }
  auto about = printable.clinic.empty() ? printable.day
                                        : fmt::format("{}, {}", printable.clinic, printable.day);
  return writer.finish(fmt::format("{}: {}", about, printable.title));
}

bool wants_landscape(const Printable& printable) {
  return std::ranges::any_of(printable.tables, [](const PrintedTable& table) {
    int characters = 0;
    for (const auto& column : table.columns) characters += column.width;
    return characters > portrait_characters;
  });
}

}  // namespace sparewell::desk
