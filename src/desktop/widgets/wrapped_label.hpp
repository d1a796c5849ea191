/// A text of several lines that breaks where its column ends.
#pragma once

#include <string>
#include <vector>

#include <wx/stattext.h>

namespace sparewell::desktop {

class WrappedLabel : public wxStaticText {
 public:
  explicit WrappedLabel(wxWindow* parent, const std::string& text = {});
  /// Hidden while there is no text.
  void set_text(const std::string& text);
  /// The column calls this when its width changes; then it has to be laid out again.
  void wrap_to(int width);
  /// Because the size of text has changed.
  void measure_again();

 protected:
  [[nodiscard]] wxSize DoGetBestSize() const override;

 private:
  int width_ = 0;
};

/// Makes `column` wrap `labels` to its width, less `margin`, whenever it is sized.
void keep_wrapped(wxWindow& column, std::vector<WrappedLabel*> labels, int margin);

}  // namespace sparewell::desktop
