/**
 * How an add-in on this machine gets into Excel, in the words that Excel's own menus use.
 */
export const sideloading = (origin, manifest) => `
Mousse is served at ${origin}. Leave this window open; stop it with Ctrl+C.
The file that Excel is given is ${manifest}

Windows
  1. Make a folder and share it: right-click it, Properties, Sharing, Share. Note its network path, \\\\machine\\folder.
  2. Copy the file above into that folder.
  3. Excel: File, Options, Trust Center, Trust Center Settings, Trusted Add-in Catalogs.
  4. Put the network path into Catalog Url, press Add catalog, tick Show in Menu, OK. Close Excel and open it again.
  5. Home, Add-ins, More Add-ins, SHARED FOLDER: choose Mousse, Add.

Mac
  1. In Finder press Command+Shift+G and go to ~/Library/Containers/com.microsoft.Excel/Data/Documents
  2. Make a folder named wef there, if there is none, and copy the file above into it.
  3. Close Excel and open it again. Home, Add-ins (or Insert, the arrow beside My Add-ins): choose Mousse under
     Developer Add-ins.

Web
  1. Open ${origin}/taskpane.html in the same browser: the form has to appear without a warning.
  2. Open a workbook at https://www.office.com in Excel. Home, Add-ins, More Add-ins, My Add-ins,
     Manage My Add-ins, Upload My Add-in.
  3. Choose the file above, Upload.

Then the Home tab has Plan a batch, and =MOUSSE. in a cell lists the functions.
To take it out again: src/docs/it.md. Ten minutes of trying it: src/docs/excel-checklist.md.
`;
