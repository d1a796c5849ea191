#include "desktop/dialogs/stock_dialog.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <wx/choice.h>
#include <wx/combobox.h>
#include <wx/textctrl.h>

#include "desktop/widgets/aside.hpp"

namespace sparewell::desktop {
namespace {

int position_of(const desk::FormField& field) {
  const auto found = std::ranges::find(field.choices, field.value);
  return static_cast<int>(found - field.choices.begin());
}

}  // namespace

StockDialog::StockDialog(wxWindow* parent, desk::StockForm form, desk::ClinicFile file)
    : AskingForm{parent, form.title, form.intro}, form_{std::move(form)}, file_{std::move(file)} {
  for (const auto& field : form_.fields) {
    if (field.closed) {
      fields_.push_back(add_closed(field.label, field.choices, position_of(field), field.help));
    } else if (!field.choices.empty()) {
      fields_.push_back(add_combo(field.label, field.choices, field.value, field.help));
    } else {
      fields_.push_back(add_text(field.label, field.value, field.help));
    }
  }
  // The sentence above the fields says whom and what it is about.
  keep_draft(fields_, file_.path, fmt::format("{}: {}", form_.title, form_.intro));
  finish_asking(
      form_.go, [this] { return attempt(); }, 300);
  if (auto* first = dynamic_cast<wxTextCtrl*>(fields_.front())) first->SelectAll();
  fields_.front()->SetFocus();
}

std::vector<std::string> StockDialog::answers() const {
  std::vector<std::string> given;
  for (const auto* field : fields_) {
    given.push_back(value_of(*field));
    auto& text = given.back();
    while (!text.empty() && text.back() == ' ') text.pop_back();
    text.erase(0, std::min(text.find_first_not_of(' '), text.size()));
  }
  return given;
}

std::string StockDialog::attempt() {
  auto booked = aside([&file = file_, &form = form_, given = answers()] {
    return desk::book_form(file, form, given);
  });
  if (!booked) return booked.error().sentence;
  booked_ = std::move(*booked);
  return "";
}

}  // namespace sparewell::desktop
