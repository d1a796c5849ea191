#include "desktop/dialogs/order_dialogs.hpp"

#include <wx/choice.h>
#include <wx/filepicker.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

enum What : int { change_line, drop_line };

/// Reads a day that may be left out; false when what is typed is none.
bool read_day(const wxTextCtrl& field, std::optional<Date>& day) {
  const auto typed = from_wx(field.GetValue().Strip(wxString::both));
  day = parse_iso_date(typed);
  return typed.empty() || day.has_value();
}

constexpr auto not_a_day = to_say("Promised for: write the day as 2026-12-24, or leave it empty.");

}  // namespace

SentenceDialog::SentenceDialog(wxWindow* parent, const Words& words, Attempt<std::string> attempt)
    : AskingForm{parent, words.title, words.intro} {
  auto* field = add_text(words.label, "", words.help);
  finish_asking(words.go, [field, attempt = std::move(attempt)] {
    return attempt(from_wx(field->GetValue().Strip(wxString::both)));
  });
  field->SetFocus();
}

AmendDialog::AmendDialog(wxWindow* parent, const std::string& order, const std::string& item,
                         int quantity, bool placed, Attempt<desk::Amendment> attempt)
    : AskingForm{parent, say("Amend line of order {}", order),
                 placed
                     ? said("The order was placed: the change makes a new revision of it, and the "
                            "earlier ones stay readable. Write another item's code to add a line.")
                     : said("The order is a draft and is simply changed. Write another item's code "
                            "to add a line.")},
      item_before_{item},
      before_{quantity} {
  item_ = add_text(said("&Item"), item,
                   said("The item's code; a line is added when the order has none for it"));
  what_ = add_choice(said("&What"),
                     {said("Change or add the line"), said("Drop what has not come of the line")},
                     change_line, said("What is to be done with the line"));
  quantity_ = add_text(said("&Pieces in all"), quantity > 0 ? std::to_string(quantity) : "",
                       said("Pieces ordered, those that have come included"));
  promised_ = add_text(said("Promise&d for"), "",
                       said("Day such as 2026-12-24, where the supplier named one"));
  why_ = add_text(said("Wh&y"), "", said("Kept with the revision"));
  approved_by_ = add_text(said("&Approved by"), "",
                          said("Who approved the new sum; needed above the clinic's limit only"));
  finish_asking(said("&Change"), [this, attempt = std::move(attempt)] {
    desk::Amendment made;
    auto refusal = read(made);
    return refusal.empty() ? attempt(made) : refusal;
  });
  quantity_->SetFocus();
}

std::string AmendDialog::read(desk::Amendment& made) const {
  desk::LineAmendment line;
  line.item = {from_wx(item_->GetValue().Strip(wxString::both))};
  if (line.item.empty()) return said("Item: write the item's code.");
  line.drop = what_->GetSelection() == drop_line;
  if (!line.drop) {
    if (!read_day(*promised_, line.promised)) return said(not_a_day);
    long pieces = 0;
    const auto typed = quantity_->GetValue().Strip(wxString::both);
    if (!typed.empty()) {
      if (!typed.ToLong(&pieces) || pieces < 1 || pieces > 1'000'000) {
        return said("Pieces in all: write a number, 1 or more.");
      }
      const bool same_line = line.item.text == item_before_ && pieces == before_;
      if (!same_line || !line.promised) line.quantity = static_cast<int>(pieces);
    }
  }
  made.lines = {std::move(line)};
  made.why = from_wx(why_->GetValue().Strip(wxString::both));
  made.approved_by = from_wx(approved_by_->GetValue().Strip(wxString::both));
  return {};
}

BackOrderDialog::BackOrderDialog(wxWindow* parent, const std::string& order,
                                 const std::string& item, Attempt<BackOrder> attempt)
    : AskingForm{parent, say("Back-order on order {}", order),
                 said("Note that the supplier sends the rest of a line later.")} {
  auto* code = add_text(said("&Item"), item, said("The item's code"));
  auto* until = add_text(said("&Promised for"), "",
                         said("Day such as 2026-12-24; empty when none was named"));
  auto* why = add_text(said("Wh&y"), "", said("What the supplier said"));
  finish_asking(said("N&ote"), [=, attempt = std::move(attempt)]() -> std::string {
    BackOrder made;
    made.item = from_wx(code->GetValue().Strip(wxString::both));
    if (!read_day(*until, made.until)) return said(not_a_day);
    made.why = from_wx(why->GetValue().Strip(wxString::both));
    return attempt(made);
  });
  until->SetFocus();
}

ReprintDialog::ReprintDialog(wxWindow* parent, const std::string& order,
                             const std::vector<std::string>& revisions, const std::string& folder,
                             Attempt<Reprint> attempt)
    : AskingForm{parent, say("Reprint order {}", order),
                 said("The workbook is written as it was sent, marked with its revision.")} {
  auto* which =
      add_choice(said("&Revision"), revisions, 0, said("Which revision is written again"));
  auto* where = add_folder(said("&Folder"), folder, said("Where the workbook is written"));
  finish_asking(said("&Write"), [=, attempt = std::move(attempt)] {
    return attempt({which->GetSelection(), from_wx(where->GetTextCtrl()->GetValue())});
  });
}

}  // namespace sparewell::desktop
