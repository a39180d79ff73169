/** Style sheets are taken in by the bundler for their effect. */
declare module "*.css";
