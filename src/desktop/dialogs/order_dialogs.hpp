/// What is asked before an order is approved, amended, put on back-order, cancelled or reprinted.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "desk/order_changes.hpp"
#include "desktop/dialogs/asking_form.hpp"

namespace sparewell::desktop {

/// Does what was asked for; gives the refusal, or "".
template <class Answer>
using Attempt = std::function<std::string(const Answer&)>;

/// One line of text: who approves, or why an order is cancelled.
class SentenceDialog : public AskingForm {
 public:
  struct Words {
    std::string title;
    std::string intro;
    std::string label;  ///< with its mnemonic
    std::string help;
    std::string go;
  };
  SentenceDialog(wxWindow* parent, const Words& words, Attempt<std::string> attempt);
};

class AmendDialog : public AskingForm {
 public:
  /// `quantity` is that of the line of `item`; `placed` asks for a reason.
  AmendDialog(wxWindow* parent, const std::string& order, const std::string& item, int quantity,
              bool placed, Attempt<desk::Amendment> attempt);

 private:
  std::string read(desk::Amendment& made) const;

  std::string item_before_;
  int before_ = 0;
  wxTextCtrl* item_ = nullptr;
  wxChoice* what_ = nullptr;
  wxTextCtrl* quantity_ = nullptr;
  wxTextCtrl* promised_ = nullptr;
  wxTextCtrl* why_ = nullptr;
  wxTextCtrl* approved_by_ = nullptr;
};

struct BackOrder {
  std::string item;
  std::optional<Date> until;
  std::string why;
};

class BackOrderDialog : public AskingForm {
 public:
  BackOrderDialog(wxWindow* parent, const std::string& order, const std::string& item,
                  Attempt<BackOrder> attempt);
};

struct Reprint {
  int position = 0;  ///< in the list of revisions
  std::string folder;
};

class ReprintDialog : public AskingForm {
 public:
  ReprintDialog(wxWindow* parent, const std::string& order,
                const std::vector<std::string>& revisions, const std::string& folder,
                Attempt<Reprint> attempt);
};

}  // namespace sparewell::desktop
