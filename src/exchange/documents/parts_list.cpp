#include "exchange/documents/parts_list.hpp"

#include "clinic/say.hpp"
#include "exchange/documents/pdf_file.hpp"
#include "exchange/documents/pdf_pages.hpp"

namespace sparewell::exchange {
namespace {

constexpr double body = 10.5;
constexpr Font part_name{12, true};
constexpr Font note{body, false};

void write_head(PdfPages& pages, const PartsList& list) {
  pages.paragraph(list.clinic_name, 13, true, 0);
  if (!list.clinic_address.empty()) pages.paragraph(list.clinic_address, 9, false, 2);
  pages.paragraph(list.title, 20, true, 16);
  pages.paragraph(list.patient, 13, true, 6);
  pages.paragraph(list.written_on, 9, false, 2);
  for (const auto& words : list.explained) pages.paragraph(words, body, false, 8);
}

void write_part(PdfPages& pages, const ListedPart& part) {
  // Its name is not parted from what is said of it.
  double high = pages.pictured_height(part.name.picture, part.name.words, part_name) + 10;
  for (const auto& words : part.details)
    high += pages.pictured_height(Pictogram::none, words, note);
  pages.need(high);
  pages.pictured(part.name.picture, part.name.words, part_name, 6);
  for (const auto& words : part.details) pages.pictured(Pictogram::none, words, note, 2);
  pages.rule(5);
}

void write_notes(PdfPages& pages, const PicturedSection& section) {
  if (section.lines.empty()) return;
  pages.need(90);
  pages.paragraph(section.heading.words, 13, true, 14);
  for (const auto& each : section.lines)
    pages.pictured(each.picture, each.words, {body, each.bold}, 5);
}

void write_list(PdfPages& pages, const PartsList& list) {
  write_head(pages, list);
  write_notes(pages, list.sensitivities);
  for (const auto& side : list.sides) {
    pages.need(110);
    pages.paragraph(side.heading, 14, true, 14);
    for (const auto& part : side.parts) write_part(pages, part);
  }
  for (const auto& care : list.care) write_notes(pages, care);
  write_notes(pages, list.cautions);
}

}  // namespace

Expected<int> write_parts_lists(const std::vector<PartsList>& lists, PaperSize paper,
                                const std::string& path) {
  // Each list counts its own pages.
  std::vector<int> counts(lists.size(), 1);
  return write_pdf(path, paper, said("parts list"), [&](PdfCanvas& canvas, int) {
    int all = 0;
    for (std::size_t i = 0; i < lists.size(); ++i) {
      PdfPages pages{canvas, {lists[i].patient, lists[i].page_numbers}, counts[i]};
      write_list(pages, lists[i]);
      counts[i] = pages.finish();
      all += counts[i];
    }
    return all;
  });
}

}  // namespace sparewell::exchange
