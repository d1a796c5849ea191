/// Writing a PDF file wholly or not at all.
#pragma once

#include <functional>
#include <string>

#include "clinic/refusal.hpp"
#include "exchange/documents/pdf_canvas.hpp"

namespace sparewell::exchange {

/// Draws pages that may say how many they are; ends the last one and returns their number.
using DrawPages = std::function<int(PdfCanvas& canvas, int pages)>;

/// Draws once without a file, to know how many pages there will be, and then into the file. Returns
/// the number of pages. Refuses with one sentence, naming the paper ("delivery sheet"), when the
/// file cannot be written, and then leaves none behind and an older one as it was.
[[nodiscard]] Expected<int> write_pdf(const std::string& path, PaperSize paper,
                                      const std::string& what, const DrawPages& draw);

}  // namespace sparewell::exchange
