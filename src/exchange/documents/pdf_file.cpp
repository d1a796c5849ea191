#include "exchange/documents/pdf_file.hpp"

#include <filesystem>

#include "clinic/say.hpp"

namespace sparewell::exchange {

Expected<int> write_pdf(const std::string& path, PaperSize paper, const std::string& what,
                        const DrawPages& draw) {
  PdfCanvas trial{"", paper};
  const int count = draw(trial, 1);
  (void)trial.finish();
  const std::string partial = path + ".partial";
  bool written = false;
  {
    PdfCanvas canvas{partial, paper};
    (void)draw(canvas, count);
    written = canvas.finish();
  }
  std::error_code error;
  if (written) std::filesystem::rename(partial, path, error);
  if (written && !error) return count;
  std::filesystem::remove(partial, error);
  return refuse(
      say("The {} {} could not be written; check that its folder is there and may be "
          "written to.",
          what, path));
}

}  // namespace sparewell::exchange
