#include "exchange/documents/visit_sheet.hpp"

#include "clinic/say.hpp"
#include "exchange/documents/one_page.hpp"
#include "exchange/documents/pdf_file.hpp"

namespace sparewell::exchange {
namespace {

constexpr LetterSize body_letters{11, 8.5};
constexpr double notes_height = 130;

int write_list(PdfCanvas& canvas, const VisitPapers& papers, int count) {
  PdfPages pages{canvas, {papers.title}, count};
  pages.paragraph(papers.clinic_name, 11, true, 0);
  pages.paragraph(papers.title, 20, true, 10);
  pages.paragraph(papers.summary, 10.5, false, 6);
  pages.paragraph("", 4, false, 4);
  pages.row(papers.columns, papers.shares, 9.5, true);
  for (const auto& row : papers.rows) pages.row(row, papers.shares, 9.5, false);
  for (const auto& caution : papers.cautions) pages.paragraph(caution, 8.5, false, 10);
  return pages.finish();
}

OnePage page_of(const VisitPage& visit, const VisitPapers& papers) {
  OnePage page;
  PageSection head;
  head.heading = {visit.title, Pictogram::none, true};
  head.letters = {18, 14};
  PageSection below;
  below.letters = body_letters;
  below.lines = {{visit.below}};
  page.rows = {{std::move(head)}, {std::move(below)}};
  for (const auto& section : visit.sections) {
    PageSection made;
    made.heading = {section.heading, Pictogram::none, true};
    made.letters = body_letters;
    made.left_out = papers.left_out;
    for (const auto& line : section.lines) {
      made.lines.push_back(
          {line.words, Pictogram::none, line.bold, line.stays ? 0 : section.weight});
    }
    page.rows.push_back({std::move(made)});
  }
  page.notes = papers.notes;
  page.notes_height = notes_height;
  page.cautions = papers.cautions;
  page.foot = true;
  return page;
}

}  // namespace

Expected<int> write_visit_papers(const VisitPapers& papers, const std::string& path) {
  return write_pdf(path, papers.paper, said("file of visit sheets"),
                   [&](PdfCanvas& canvas, int count) {
                     int page = write_list(canvas, papers, count);
                     for (const auto& visit : papers.pages) {
                       (void)draw_one_page(canvas, page_of(visit, papers));
                       write_foot(canvas, {visit.foot}, ++page, count, one_page_edge);
                       canvas.next_page();
                     }
                     return page;
                   });
}

}  // namespace sparewell::exchange
