/// The program: its command line, its folders, and the last net under failures.
#pragma once

#include <wx/app.h>

#include "clinic/date.hpp"

namespace sparewell::desktop {

class MainFrame;

class App : public wxApp {
 public:
  bool OnInit() override;
  void OnInitCmdLine(wxCmdLineParser& parser) override;
  bool OnCmdLineParsed(wxCmdLineParser& parser) override;
  bool OnExceptionInMainLoop() override;

 private:
  Date today_;
  std::string path_;
};

}  // namespace sparewell::desktop
